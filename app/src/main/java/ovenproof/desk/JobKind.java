package ovenproof.desk;

/** Long work that the desk can do; found and named before what was interrupted begins again. */
public interface JobKind extends Jobs.Work {
  /** In the job's row and on pages. */
  String kind();
}
