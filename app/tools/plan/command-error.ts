/** A wrong option or an unreadable file: one line for stderr, exit code 2. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
}
