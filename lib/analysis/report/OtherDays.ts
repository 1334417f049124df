/** Analyses of a few other days than the open one; the one asked for longest ago is given up first. */
export class OtherDays<T> {
  private readonly kept = new Map<string, Promise<T>>();

  /** @param most how many are kept */
  constructor(
    private readonly make: (day: string) => Promise<T>,
    private readonly most = 2,
  ) {}

  /** What was made for the day; made anew if it is not kept, or failed. */
  of(day: string): Promise<T> {
    const making = this.kept.get(day) ?? this.make(day);
    this.kept.delete(day);
    this.kept.set(day, making);
    const [oldest] = this.kept.keys();
    if (this.kept.size > this.most && oldest !== undefined) this.kept.delete(oldest);
    making.catch(() => this.kept.delete(day));
    return making;
  }
}
