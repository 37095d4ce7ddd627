package org.foreload.examples.output;

/** The three faces of a report. */
public enum Format {
    /** Aligned columns with units, rounded, for people. */
    TABLE {
        @Override
        public String render(Report report) {
            return TextTable.render(report);
        }
    },
    /** One JSON object with every digit. */
    JSON {
        @Override
        public String render(Report report) {
            return JsonOutput.render(report);
        }
    },
    /**
     * The report's first list with the single values in every row, or these as one row, with every digit and a head
     * line.
     */
    CSV {
        @Override
        public String render(Report report) {
            return CsvOutput.render(report);
        }
    };

    /** The report as text that ends with a newline. */
    public abstract String render(Report report);
}
