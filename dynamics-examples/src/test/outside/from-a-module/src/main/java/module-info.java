/** A program of somebody else's, as a module. */
module outside {
    requires org.foreload.core;
    requires org.foreload.file;
    // What the file readers bring are modules of their own, and the machine looks for none that nobody requires.
    requires com.fasterxml.jackson.databind;
    requires com.fasterxml.jackson.dataformat.csv;
}
