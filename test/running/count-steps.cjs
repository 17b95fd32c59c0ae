// Loaded before the service: counts how often each block of its code runs, and gives the sum since it was asked before.
const { Session } = require("node:inspector");

const session = new Session();
session.connect();
session.post("Profiler.enable");
session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: true });

process.on("message", () => {
  session.post("Profiler.takePreciseCoverage", (_error, { result }) => {
    let steps = 0;
    for (const { functions } of result)
      for (const { ranges } of functions) for (const { count } of ranges) steps += count;
    process.send({ steps });
  });
});
