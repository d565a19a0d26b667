package steadyturn.cli.output.table;

import steadyturn.cli.words.Words;

/** A number of swings in words. */
final class Swings {

  private Swings() {}

  static String count(int number) {
    return number == 1 ? Words.say("swings.one") : Words.say("swings.many", number);
  }
}
