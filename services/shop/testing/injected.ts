import inject, { type InjectOptions, type Response } from "light-my-request";
import type { App } from "../src/http/app-type.ts";

/** Asks a service that is ready without a port, as its server does: whatever listens to requests has its turn. */
export function injected({ server }: Pick<App, "server">, asked: InjectOptions): Promise<Response> {
  return inject((request, response) => void server.emit("request", request, response), asked);
}
