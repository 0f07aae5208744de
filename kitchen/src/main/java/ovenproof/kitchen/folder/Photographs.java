package ovenproof.kitchen.folder;

/** Whether photographs are taken, which is most of the work of a folder. */
public enum Photographs {
  TAKEN,
  LEFT_OUT
}
