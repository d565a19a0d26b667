package steadyturn.analysis.lab;

/** A course of lead arm and wrist that comes from elsewhere, laid in place of a drawn one. */
interface ArmCourse {

  /** From the top to impact, s. */
  double downS();

  /** Lays arm, forearm and wrist from the first move to the finish. */
  void lay(Stage stage, SwingPlan plan, double startS, double topS);
}
