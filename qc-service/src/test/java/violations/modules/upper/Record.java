package violations.modules.upper;

/** Of the upper module. */
public class Record {}
