package org.foreload.examples.answer;

import java.util.List;
import java.util.Optional;
import org.foreload.conventions.Gravity;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.path.Path;
import org.foreload.strategy.CornerStudy;

/** Says so where a car is lost on a straight that is banked: there the bank takes grip, and gives none. */
final class BankedStraight {

    /** Bank, rad, below which it is not named: 10 degrees, more than a public road has. */
    private static final double STEEP = Math.toRadians(10);

    private BankedStraight() {}

    /**
     * The cause of an entry that fails, where it is the bank of a straight.
     *
     * @return a sentence; empty for an entry that makes it, or that fails for another cause
     */
    static Optional<String> of(CornerStudy study, EntryResult entry, Units units) {
        List<EntryEvent> events = entry.events();
        if (entry.made() || events.isEmpty()) {
            return Optional.empty();
        }
        double begins = entry.wentFirst().orElse(events.get(events.size() - 1)).station();
        Path path = study.simulator().corner().path();
        double bank = path.banking(begins);
        if (!(Math.abs(bank) >= STEEP) || path.curvature(begins) != 0) {
            return Optional.empty();
        }
        return Optional.of("The trouble begins on a straight that is banked by "
                + Numbers.rounded(Math.toDegrees(Math.abs(bank)), 1)
                + "°: to stay on it the tyres must hold "
                + units.deceleration(Gravity.G * Math.sin(Math.abs(bank)))
                + " across before they brake, drive or turn (banking_deg tilts the whole line).");
    }

    /** The same of the closest attempt with firm braking, where a search has found nothing. */
    static Optional<String> of(CornerStudy study) {
        return of(study, study.latest(ShortApproach.firm(study)).entry(), Units.SI);
    }
}
