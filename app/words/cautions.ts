/** The cautions that stand on every page. */
export const cautions: readonly string[] = [
  'Endfloat is a decision aid. It computes from data that its user enters and from nothing else.',
  "The maker's current manual, the part's rated life, class, flag and local codes, and licensed service come first.",
  'Within limits does not mean safe to run.',
  'An extrapolation never authorises a longer interval.',
  'Without a limit there is no verdict.',
];
