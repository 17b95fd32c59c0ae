import Type from "typebox";

/** The path parameter of what is asked of one bit. */
export const BitPath = Type.Object({ bitId: Type.String({ description: "Id of a bit." }) });
