import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ConfigError, readConfig, SETTINGS } from "./config.ts";
import { newKeyText } from "./keys/key-text.ts";

const example = readFileSync(new URL("../../../.env.example", import.meta.url), "utf8");
const listed = [...example.matchAll(/^(RIMWISE_[A-Z_]+)=(.*)$/gm)].map(([, name = "", value = ""]) => ({
  name,
  value,
}));

describe("the settings", () => {
  test("by default are the ones that .env.example shows, and it shows every one", () => {
    expect(listed.map(({ name }) => name).sort()).toEqual(Object.keys(SETTINGS.properties).sort());
    const shown = Object.fromEntries(listed.map(({ name, value }) => [name, value]));
    expect(readConfig(shown)).toEqual(readConfig({}));
  });

  test("let nobody but this machine in by default", () => {
    expect(readConfig({})).toMatchObject({ host: "127.0.0.1", corsOrigins: [], trustedProxies: [] });
  });

  test("that are wrong are all named in one message, without their values", () => {
    const wrong = {
      RIMWISE_PORT: "http",
      RIMWISE_LOG_LEVEL: "loud",
      RIMWISE_FIRST_KEY: "rw_secret-of-somebody",
      RIMWISE_CORS_ORIGINS: "https://shop.example,*",
      RIMWISE_RATE_LIMIT: "7",
    };
    const read = () => readConfig(wrong);
    expect(read).toThrow(ConfigError);
    for (const name of Object.keys(wrong)) expect(read).toThrow(name);
    expect(read).not.toThrow("somebody");
  });

  test("are read as numbers and lists", () => {
    const { text } = newKeyText();
    const config = readConfig({
      RIMWISE_PORT: "9090",
      RIMWISE_CORS_ORIGINS: "https://a.example, https://b.example",
      RIMWISE_FIRST_KEY: text,
    });
    expect(config.port).toBe(9090);
    expect(config.corsOrigins).toEqual(["https://a.example", "https://b.example"]);
    expect(config.firstKey).toBe(text);
  });

  test("of a relative database starts in the folder where the command was given", () => {
    expect(readConfig({ INIT_CWD: "/srv/shop", RIMWISE_DATABASE: "rack.sqlite" }).database).toBe(
      "/srv/shop/rack.sqlite",
    );
    expect(readConfig({ INIT_CWD: "/srv/shop", RIMWISE_DATABASE: "/var/rack.sqlite" }).database).toBe(
      "/var/rack.sqlite",
    );
    expect(readConfig({ RIMWISE_DATABASE: ":memory:" }).database).toBe(":memory:");
  });

  test.each([
    [{ RIMWISE_DATABASE: "/srv/rack.sqlite" }, "/srv/rack.sqlite.signing-keys.json"],
    [{ INIT_CWD: "/srv", RIMWISE_DATABASE: "rack.sqlite" }, "/srv/rack.sqlite.signing-keys.json"],
    [{ INIT_CWD: "/srv", RIMWISE_SIGNING_KEYS: "keys.json" }, "/srv/keys.json"],
    [{ RIMWISE_DATABASE: ":memory:" }, ":memory:"],
    [{ RIMWISE_DATABASE: ":memory:", RIMWISE_SIGNING_KEYS: "/srv/keys.json" }, "/srv/keys.json"],
  ])("%j keep the signing keys in %s", (settings, file) => {
    expect(readConfig(settings).signingKeys).toBe(file);
  });
});
