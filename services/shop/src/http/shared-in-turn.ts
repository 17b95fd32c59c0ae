/**
 * A look-up that all who ask for the same thing in one turn of the event loop share. What is written is written at the end of
 * a turn, after what was found in it is forgotten: nobody who asks after a change was acknowledged gets what was before it.
 */
export function sharedInTurn<Value>(
  look: (asked: string) => Promise<Value>,
): (asked: string) => Promise<Value> {
  const found = new Map<string, Promise<Value>>();
  return (asked) => {
    if (found.size === 0) setImmediate(() => found.clear());
    const shared = found.get(asked) ?? look(asked);
    found.set(asked, shared);
    return shared;
  };
}
