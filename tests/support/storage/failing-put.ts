/**
 * From now on the database refuses a put into that table, so often; what a full or failing device
 * does. Answers how to end it.
 */
export function failPuts(table: string, name: string, times = 1): () => void {
  const put = IDBObjectStore.prototype.put;
  let left = times;
  const end = (): void => {
    IDBObjectStore.prototype.put = put;
  };
  IDBObjectStore.prototype.put = function (...row) {
    if (this.name !== table || left === 0) return put.apply(this, row);
    left--;
    throw new DOMException('made to fail', name);
  };
  return end;
}

/**
 * From now on a put fails by chance: no room, an unknown fault of the disk, or its whole transaction is given up.
 * `kept` are rows whose transaction is done, as 'table seq' of events, 'table id' of others.
 */
export function failAtRandom(random: () => number, share: number) {
  const put = IDBObjectStore.prototype.put;
  const kept = new Set<string>();
  let failed = 0;
  let calm = false;
  let name = '';
  IDBObjectStore.prototype.put = function (row: { id?: string; seq?: number }, ...more) {
    name = this.transaction.db.name;
    const chance = calm ? 1 : random();
    if (chance < share) {
      failed++;
      if (chance < share / 3) throw new DOMException('made to fail', 'QuotaExceededError');
      if (chance < (2 * share) / 3) throw new DOMException('made to fail', 'UnknownError');
      const request = put.call(this, row, ...more);
      this.transaction.abort();
      return request;
    }
    const key = `${this.name} ${this.name === 'events' ? row.seq : row.id}`;
    this.transaction.addEventListener('complete', () => kept.add(key));
    return put.call(this, row, ...more);
  };
  return {
    kept: kept as ReadonlySet<string>,
    failed: () => failed,
    databaseName: () => name,
    /** No more fail; what is kept is still noted. */
    calm: () => {
      calm = true;
    },
    end: () => {
      IDBObjectStore.prototype.put = put;
    },
  };
}
