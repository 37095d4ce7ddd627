package org.foreload.validation;

import java.util.Locale;

/** Where an expected value comes from, and so how much it proves. */
public enum Status {
    /** The value, or the formula that it is an evaluation of, was read in the source named. */
    READ,
    /** Recalled from the source named, not read there. */
    FROM_MEMORY,
    /** What the trade holds to be so; nobody's measurement. */
    COMMON_PRACTICE,
    /** Follows from the model's own axioms: a closed form or an identity, evaluated outside the library. */
    EXACT,
    /** Computed by a second program in this module that shares no code with the library. */
    INDEPENDENT;

    /** In words, for reports: {@code from memory}. */
    public String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static Status of(String words) {
        for (Status status : values()) {
            if (status.words().equals(words)) {
                return status;
            }
        }
        throw new IllegalArgumentException("no status " + words);
    }
}
