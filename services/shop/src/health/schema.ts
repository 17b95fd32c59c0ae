import Type from "typebox";

export const LivenessSchema = Type.Object(
  { status: Type.Literal("alive", { description: "The process answers." }) },
  { $id: "Liveness", description: "The process is running.", additionalProperties: false },
);

export const ReadinessSchema = Type.Object(
  {
    status: Type.Enum(["ready", "not-ready"], {
      type: "string",
      description: "Whether to send requests here.",
    }),
    checks: Type.Object(
      {
        database: Type.Boolean({ description: "The database answers." }),
        migrations: Type.Boolean({ description: "The database is at this program's level." }),
        disk: Type.Boolean({ description: "There is room to write." }),
        writable: Type.Boolean({ description: "The database is still in its place and may be written." }),
        open: Type.Boolean({ description: "The service is not shutting down." }),
      },
      { description: "Each thing that must hold.", additionalProperties: false },
    ),
    reason: Type.Optional(
      Type.String({ description: "Why not, and what to do. Absent when the service is ready." }),
    ),
  },
  { $id: "Readiness", description: "Whether the service can do its work.", additionalProperties: false },
);

export const VersionSchema = Type.Object(
  {
    name: Type.Literal("rimwise", { description: "Name of the service." }),
    version: Type.String({ description: "Version of the service." }),
    engineVersion: Type.String({ description: "Version of the computation behind every plan." }),
  },
  { $id: "Version", description: "What is running.", additionalProperties: false },
);
