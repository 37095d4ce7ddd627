package org.foreload.examples.command;

import org.foreload.file.DecimalText;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Numbers on the command line; never NaN or infinite. */
final class FiniteNumber implements ITypeConverter<Double> {

    @Override
    public Double convert(String text) {
        double value = DecimalText.parse(text);
        if (!Double.isFinite(value)) {
            throw new TypeConversionException("not a finite number");
        }
        return value;
    }
}
