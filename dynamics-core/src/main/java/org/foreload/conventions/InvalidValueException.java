package org.foreload.conventions;

import java.util.Objects;

/** A number or word that no model can be built from: which field, what value, and what is allowed. */
public final class InvalidValueException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String field;
    private final String value;
    private final String allowed;

    /**
     * @param field name of the field, with its unit where it has one, as in the files ({@code mass_kg})
     * @param value the offending value
     * @param allowed what is allowed instead, in words that follow "must be"
     */
    public InvalidValueException(String field, Object value, String allowed) {
        super(field + ": " + value + " is not allowed; it must be " + allowed);
        this.field = Objects.requireNonNull(field, "field");
        this.value = String.valueOf(value);
        this.allowed = Objects.requireNonNull(allowed, "allowed");
    }

    /** Name of the field. */
    public String field() {
        return field;
    }

    /** The offending value as text. */
    public String value() {
        return value;
    }

    /** What is allowed, in words that follow "must be". */
    public String allowed() {
        return allowed;
    }
}
