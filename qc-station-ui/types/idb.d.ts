// What the screens use of idb 7.0.1 (ISC); the file served is its own.
export interface Cursor<T> { value: T; continue(): Promise<Cursor<T> | null> }
export interface Store<T = any> {
  put(value: T, key?: IDBValidKey): Promise<IDBValidKey>;
  add(value: T, key?: IDBValidKey): Promise<IDBValidKey>;
  get(key: IDBValidKey): Promise<T | undefined>;
  getAll(): Promise<T[]>;
  getAllKeys(): Promise<IDBValidKey[]>;
  delete(key: IDBValidKey): Promise<void>;
  count(): Promise<number>;
  openCursor(): Promise<Cursor<T> | null>;
}
export interface Transaction { objectStore(name: string): Store; done: Promise<void>; abort(): void }
export interface Database {
  transaction(names: string | string[], mode?: "readonly" | "readwrite", options?: { durability?: "default" | "strict" | "relaxed" }): Transaction;
  createObjectStore(name: string, options?: { keyPath?: string; autoIncrement?: boolean }): Store;
  close(): void;
}
export function openDB(name: string, version: number, callbacks: {
  upgrade?: (database: Database, oldVersion: number) => void; blocking?: () => void; terminated?: () => void;
}): Promise<Database>;
