package ovenproof.measure;

/** How far a long work is; called from several threads. */
public interface Progress {
  Progress NONE =
      new Progress() {
        @Override
        public void begin(int steps) {}

        @Override
        public void step() {}
      };

  void begin(int steps);

  void step();
}
