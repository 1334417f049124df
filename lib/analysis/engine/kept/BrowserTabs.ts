import type { Tabs, TabsListener } from './Tabs';

const lockName = 'endfloat writes';
const channelName = 'endfloat tabs';
/** How long a tab that is asked to give up writing may take to finish, ms. */
const patience_ms = 3_000;

type Message = 'give up' | 'given up' | 'written';

/**
 * One tab writes at a time: it holds a lock (Web Locks API) for as long as it lives; where a browser has none, every tab writes
 * and the count of writes alone keeps them from overwriting each other.
 */
export class BrowserTabs implements Tabs {
  writes = false;
  takenOver = false;
  private readonly channel = new BroadcastChannel(channelName);
  private listener: TabsListener | null = null;
  private waiting: AbortController | null = null;
  /** The request by which this tab holds the lock. */
  private holding: object | null = null;
  private onGivenUp: () => void = () => {};

  async join(listener: TabsListener): Promise<void> {
    this.listener = listener;
    this.channel.onmessage = ({ data }: MessageEvent<Message>) => void this.hear(data);
    if (navigator.locks === undefined) this.writes = true;
    else if (!(await this.held({ ifAvailable: true }))) this.queue();
  }

  async takeOver(): Promise<void> {
    if (this.writes) return;
    const givenUp = new Promise<void>((resolve) => {
      this.onGivenUp = resolve;
      setTimeout(resolve, patience_ms);
    });
    this.say('give up');
    await givenUp;
    this.waiting?.abort();
    // The other tab may be frozen: it learns that it has lost the lock, and the count of writes guards what is kept.
    if (!this.writes) await this.held({ steal: true });
  }

  written(): void {
    this.say('written');
  }

  private say(message: Message): void {
    this.channel.postMessage(message);
  }

  private async hear(message: Message): Promise<void> {
    if (message === 'written') this.listener?.onWritten();
    if (message === 'given up') this.onGivenUp();
    if (message === 'give up' && this.writes) {
      this.lose();
      await this.listener?.idle();
      this.say('given up');
    }
  }

  /** Waits for the tab that writes to be closed. */
  private queue(): void {
    this.waiting = new AbortController();
    void this.held({ signal: this.waiting.signal });
  }

  /** Asks for the lock and keeps it for good; false if it is not to be had. */
  private held(options: LockOptions): Promise<boolean> {
    const asked = {};
    return new Promise((resolve) => {
      navigator.locks
        .request(lockName, options, (lock) => {
          resolve(lock !== null);
          if (lock === null) return;
          this.holding = asked;
          this.writes = true;
          this.takenOver = false;
          this.listener?.onRole();
          return new Promise<never>(() => {});
        })
        .catch(() => {
          resolve(false);
          // A request that was given up while it waited has lost nothing.
          if (this.holding !== asked) return;
          this.holding = null;
          this.lose();
          this.queue();
        });
    });
  }

  private lose(): void {
    if (!this.writes) return;
    this.writes = false;
    this.takenOver = true;
    this.listener?.onRole();
  }
}
