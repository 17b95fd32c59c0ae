/** Thrown for a database file, or a copy of one, that is not what it should be. The message says what is wrong and what to do. */
export class DatabaseFileError extends Error {}
