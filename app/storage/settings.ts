import type { Keeper } from './keeper.ts';

export interface Settings {
  /** What was kept under that name; null where nothing was. The reader checks its shape. */
  setting(name: string): Promise<unknown>;
  keepSetting(name: string, value: unknown): Promise<void>;
  forgetSetting(name: string): Promise<void>;
}

export function createSettings(keeper: Keeper): Settings {
  return {
    setting: (name) =>
      keeper.read(['settings'], async (t) => (await t.get('settings', name))?.value ?? null),
    keepSetting: (name, value) =>
      keeper.write(`setting ${name}`, ['settings'], (t) => t.put('settings', { id: name, value })),
    forgetSetting: (name) =>
      keeper.write(`setting ${name}`, ['settings'], (t) => t.remove('settings', name)),
  };
}
