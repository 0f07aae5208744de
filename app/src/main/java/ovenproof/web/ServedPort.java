package ovenproof.web;

/** The port to serve on; 0 for a free one. */
record ServedPort(int number) {}
