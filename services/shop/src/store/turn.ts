/** How long one piece of work goes on before others get a turn: a fifth of what nobody may hold the event loop for. */
export const TURN_MS = 10;
