package org.foreload.examples.fuzz;

import org.foreload.braking.TabulatedRelease;
import org.foreload.file.InputException;
import org.foreload.file.ReleaseFile;

/** Any bytes make a release shape or a refusal; a shape starts at 1, ends at 0 and never rises. */
public final class ReleaseFuzz {

    /** Points at which a shape is read. */
    private static final int POINTS = 64;

    private ReleaseFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) {
        TabulatedRelease shape;
        try {
            shape = ReleaseFile.read(Scratch.write("release.csv", data), "fuzz");
        } catch (InputException refused) {
            OneLineCheck.of(refused);
            return;
        }
        if (shape.remaining(0) != 1 || shape.remaining(1) != 0) {
            throw new IllegalStateException("from " + shape.remaining(0) + " to " + shape.remaining(1));
        }
        double before = 1;
        for (int i = 0; i <= POINTS; i++) {
            double now = shape.remaining((double) i / POINTS);
            if (!(now <= before && now >= 0)) {
                throw new IllegalStateException("rises from " + before + " to " + now);
            }
            before = now;
        }
    }
}
