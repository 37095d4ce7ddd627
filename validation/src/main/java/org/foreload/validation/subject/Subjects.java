package org.foreload.validation.subject;

import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** All code under test, by name. */
public final class Subjects {

    private static final Map<String, Subject> ALL = all();

    private Subjects() {}

    private static Map<String, Subject> all() {
        Map<String, Subject> all = new TreeMap<>();
        all.putAll(LoadSubjects.all());
        all.putAll(BrakingSubjects.all());
        all.putAll(GripSubjects.all());
        all.putAll(TyreSubjects.all());
        all.putAll(PathSubjects.all());
        all.putAll(HandlingSubjects.all());
        all.putAll(ManoeuvreSubjects.all());
        all.putAll(LimitSubjects.all());
        all.putAll(EntrySubjects.all());
        return Collections.unmodifiableMap(all);
    }

    /** All names. */
    public static Set<String> names() {
        return ALL.keySet();
    }

    /**
     * The code of that name.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Subject named(String name) {
        Subject subject = ALL.get(name);
        if (subject == null) {
            throw new IllegalArgumentException("no subject " + name + "; there are " + ALL.keySet());
        }
        return subject;
    }
}
