package ovenproof.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import ovenproof.core.panel.PanelAnalysis;
import ovenproof.core.panel.table.RatingTableReader;
import ovenproof.core.panel.table.ReadTable;
import ovenproof.evidence.ratings.RatingFile;

/**
 * A rating table from bytes to the finished analysis: 100,000 ratings in several shapes, and a
 * campaign's panel. Prints the first run (cold), the median of the next five, and the processor
 * time of that on all threads, which says more on a busy machine.
 */
public final class PanelBenchmark {

  private static final OperatingSystemMXBean PROCESS =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private PanelBenchmark() {}

  /** Shape of a table; missing is the share of rows left out. */
  private record Shape(
      String name, int persons, int products, int batches, int attributes, double missing) {

    byte[] table() {
      Random random = new Random(1);
      StringBuilder text = new StringBuilder("assessor,product,batch");
      for (int a = 0; a < attributes; a++) {
        text.append(",attribute").append((char) ('A' + a));
      }
      text.append('\n');
      for (int j = 0; j < persons; j++) {
        for (int p = 0; p < products; p++) {
          for (int b = 0; b < batches; b++) {
            if (random.nextDouble() >= missing) {
              text.append('T').append(j).append(",oven ").append(p).append(',').append(b + 1);
              for (int a = 0; a < attributes; a++) {
                double value = 50 + p + 5 * ((p * 7 + b * 3) % 5) + 10 * random.nextGaussian();
                text.append(',').append(Math.max(0, Math.min(100, Math.round(value))));
              }
              text.append('\n');
            }
          }
        }
      }
      return text.toString().getBytes(StandardCharsets.UTF_8);
    }
  }

  public static void main(String[] args) {
    Shape[] shapes = {
      new Shape("campaign: 8 people, 8 products, 3 batches, 5 attributes", 8, 8, 3, 5, 0),
      new Shape("campaign, a tenth missing", 8, 8, 3, 5, 0.1),
      new Shape("100,000: 100 people, 20 products, 5 batches, 10 attributes", 100, 20, 5, 10, 0),
      new Shape("100,000 less a tenth, the same", 100, 20, 5, 10, 0.1),
      new Shape(
          "100,000 rows: 500 people, 20 products, 10 batches, 1 attribute", 500, 20, 10, 1, 0),
      new Shape("100,000 rows less a twentieth, the same", 500, 20, 10, 1, 0.05),
      new Shape(
          "100,000: 5,000 people, 20 products, once each, a fifth missing", 5000, 20, 1, 1, 0.2),
    };
    for (Shape shape : shapes) {
      byte[] bytes = shape.table();
      double[] seconds = new double[6];
      double[] reading = new double[6];
      double[] processor = new double[6];
      int ratings = 0;
      for (int i = 0; i < seconds.length; i++) {
        long start = System.nanoTime();
        long used = PROCESS.getProcessCpuTime();
        ReadTable table = RatingTableReader.read(RatingFile.read("table.csv", bytes));
        reading[i] = (System.nanoTime() - start) / 1e9;
        PanelAnalysis.of(table.ratings());
        seconds[i] = (System.nanoTime() - start) / 1e9;
        processor[i] = (PROCESS.getProcessCpuTime() - used) / 1e9;
        ratings = table.ratings().size();
      }
      double cold = seconds[0];
      Arrays.sort(seconds, 1, 6);
      Arrays.sort(reading, 1, 6);
      Arrays.sort(processor, 1, 6);
      System.out.printf(
          "%-66s %7d ratings  first %.3f s  then %.3f s (reading %.3f s), processor %.3f s%n",
          shape.name, ratings, cold, seconds[3], reading[3], processor[3]);
    }
  }
}
