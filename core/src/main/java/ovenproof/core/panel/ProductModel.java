package ovenproof.core.panel;

/**
 * What a fitted model says about the products of one attribute: adjusted means, how far they are
 * uncertain against each other, and the test of "all products are equal".
 */
interface ProductModel {

  /** Mean of each product, adjusted to the same people, sessions and conditions. */
  double[] means();

  /** Standard error of each mean, without the part that all products share. */
  double[] standardErrors();

  /** Standard error of the difference of two means. */
  double standardErrorOfDifference(int i, int j);

  /** Degrees of freedom of that standard error. */
  double degreesOfDifference(int i, int j);

  /** The test that all products are equal. */
  FTest productTest();

  VarianceComponents components();
}
