/**
 * Lets messages in between two stretches of work, so that a cancel overtakes; throws when the job was
 * cancelled. `part` is how much of the whole is done, 0..1.
 */
export type Checkpoint = (part: number) => Promise<void>;

export const noCheckpoint: Checkpoint = async () => {};
