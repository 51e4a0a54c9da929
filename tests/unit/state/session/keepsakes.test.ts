import { signal } from '@preact/signals';
import { describe, expect, test, vi } from 'vitest';
import type { EventBody, SessionEvent } from '../../../../app/core/session/session-event.ts';
import { createNoteDraft, createRecordPhotos } from '../../../../app/state/session/keepsakes.ts';
import { storeWithSession } from '../../../support/state/made-easel.ts';
import { faultOf } from '../../../support/state/made-store.ts';
import { eventSample, photoSample } from '../../../support/storage/kept-samples.ts';

/** An easel that writes what it is told, or another window's. */
function easelOf(inCharge = true) {
  const log = signal<readonly SessionEvent[]>([]);
  const tell = (...bodies: readonly EventBody[]): void => {
    if (!inCharge) return;
    log.value = [...log.value, ...bodies.map((what) => eventSample('s', log.value.length, what))];
  };
  return { log, tell, step: signal(null), record: signal(null) };
}

describe('a note being typed', () => {
  const draftName = 'note draft s';

  async function note(inCharge = true, kept?: string) {
    const store = await storeWithSession();
    if (kept !== undefined) await store.keepSetting(draftName, kept);
    const easel = easelOf(inCharge);
    const draft = createNoteDraft({ keepsakes: store, easel, sessionId: 's' });
    return { store, easel, draft };
  }

  test('comes back after the window was closed', async () => {
    const { store, easel, draft } = await note();
    draft.change('More water next t');
    await store.settled();
    const again = createNoteDraft({ keepsakes: store, easel, sessionId: 's' });
    expect(again.text.value).toBe('');
    await again.open();
    expect(again.text.value).toBe('More water next t');
    const elsewhere = createNoteDraft({ keepsakes: store, easel, sessionId: 't' });
    await elsewhere.open();
    expect(elsewhere.text.value).toBe('');
  });

  test('what she types before it is there counts', async () => {
    const { draft } = await note(true, 'from before');
    const opening = draft.open();
    draft.change('new');
    await opening;
    expect(draft.text.value).toBe('new');
  });

  test('put in the log it is trimmed, and its draft is forgotten', async () => {
    const { store, easel, draft } = await note();
    draft.change('  More water.  ');
    expect(draft.keep()).toBe(true);
    expect([draft.text.value, easel.log.value.map(({ what }) => what)]).toEqual([
      '',
      [{ kind: 'note', text: 'More water.' }],
    ]);
    await expect.poll(() => store.setting(draftName)).toBeNull();
  });

  test('a draft whose line is in the log already is done with', async () => {
    const { easel, draft } = await note(true, ' More water. ');
    easel.tell({ kind: 'note', text: 'More water.' });
    await draft.open();
    expect(draft.text.value).toBe('');
  });

  test('where another window has the session it stays as it is', async () => {
    const { store, draft } = await note(false);
    draft.change('mine');
    expect(draft.keep()).toBe(false);
    expect(draft.text.value).toBe('mine');
    await store.settled();
    expect(await store.setting(draftName)).toBe('mine');
  });

  test('the next note typed at once is not forgotten with the last', async () => {
    const { store, draft } = await note();
    draft.change('one');
    draft.keep();
    draft.change('two');
    await store.settled();
    await store.settled();
    expect(await store.setting(draftName)).toBe('two');
  });
});

describe('photos for the record', () => {
  test('one whose window was closed before its line gets it, and only once', async () => {
    const store = await storeWithSession();
    await store.keepRecordPhoto('s', photoSample('p'), 'wash 1');
    const easel = easelOf();
    const photos = createRecordPhotos({ keepsakes: store, easel, sessionId: 's' });
    await photos.open();
    await photos.open();
    expect(easel.log.value.map(({ what }) => what)).toEqual([
      { kind: 'photo', photoId: 'p', key: 'wash 1' },
    ]);
    const none = createRecordPhotos({ keepsakes: store, easel, sessionId: 'another' });
    await none.open();
    expect(easel.log.value).toHaveLength(1);
  });

  test('what is no photo is refused in a sentence and not kept', async () => {
    const easel = easelOf();
    const keepRecordPhoto = vi.fn();
    const photos = createRecordPhotos({
      keepsakes: {
        keepRecordPhoto,
        lastRecordPhoto: () => Promise.reject(faultOf('StorageError', 'no')),
      },
      easel,
      sessionId: 's',
    });
    await photos.open(); // nothing to be read: nothing is due
    const taking = photos.take(new Blob(['a shopping list']));
    expect(photos.keeping.value).toBe(true);
    await taking;
    expect(photos.problem.value).toBeTruthy();
    expect([photos.keeping.value, photos.stands.value, easel.log.value]).toEqual([
      false,
      false,
      [],
    ]);
    expect(keepRecordPhoto).not.toHaveBeenCalled();
  });
});
