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
