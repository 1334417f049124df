/**
 * Resolves in the next task, after messages that wait, a word to stop among them.
 *
 * By a message of its own: a timer would wait four milliseconds where it follows others, and longer in a tab that is not looked at.
 */
export function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
