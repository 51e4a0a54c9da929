import type { Store } from '../storage/open-store.ts';

/** Where a session keeps what stands beside its log: a note being typed, the bytes of photos. */
export type Keepsakes = Pick<
  Store,
  | 'photo'
  | 'keepRecordPhoto'
  | 'lastRecordPhoto'
  | 'setting'
  | 'keepSetting'
  | 'forgetSetting'
  | 'settled'
  | 'saving'
>;
