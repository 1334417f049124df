/** The oldest Node.js that the pinned packages run on. */
const oldest = [20, 20];

/**
 * Ends the process with a message if this Node.js is too old.
 * Written in plain old syntax and called before anything newer is loaded, so that an old Node.js can still say so.
 */
export function checkNode() {
  const found = process.versions.node.split('.').map(Number);
  if (found[0] > oldest[0] || (found[0] === oldest[0] && found[1] >= oldest[1])) return;
  console.error(
    `Node.js ${oldest.join('.')} or newer is needed, this is ${process.versions.node}. Install a newer one, then run the command again.`,
  );
  process.exit(1);
}
