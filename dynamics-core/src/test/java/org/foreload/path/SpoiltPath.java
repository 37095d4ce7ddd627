package org.foreload.path;

import java.lang.reflect.Proxy;
import java.util.function.DoublePredicate;

/** A line of one's own: another line, of which one answer is spoilt. */
public final class SpoiltPath {

    private SpoiltPath() {}

    /** A line that gives this answer wherever it is asked, as to where it starts. */
    public static Path of(Path sound, String method, Object answer) {
        return of(sound, method, s -> true, answer);
    }

    /** A line that gives this answer at some stations. */
    public static Path of(Path sound, String method, DoublePredicate where, Object answer) {
        return (Path) Proxy.newProxyInstance(
                Path.class.getClassLoader(), new Class<?>[] {Path.class}, (self, called, arguments) -> {
                    boolean here = arguments == null || where.test((double) arguments[0]);
                    return called.getName().equals(method) && here ? answer : called.invoke(sound, arguments);
                });
    }
}
