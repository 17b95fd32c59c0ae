/** What can be done with the files of a database, whoever has them open: copied, checked, taken apart, put in place. */
export {
  checkPages,
  contentOf,
  copyDatabaseFile,
  enclosedIn,
  encloseIn,
  removeEnclosed,
  valuesIn,
  whileUnused,
} from "./sqlite/copy.ts";
