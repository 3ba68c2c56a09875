// Lightround's service worker: keeps one version of the app's own files on the tablet and answers from it, online or not.
// `cargo xtask build` seals it: SEAL then names every built file with its SHA-256, and the version is the hash of all that.
"use strict";

const SEAL = /*seal*/ { version: "unsealed", files: {} } /*seal*/;
const OURS = "lightround-";
const CACHE = OURS + SEAL.version;

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(takeCharge()));
self.addEventListener("message", (event) => {
  if (event.data?.kind === "take-over") event.waitUntil(self.skipWaiting());
});
// A browser that knows this tells when there is a network again. What is to be sent has to be signed, and the keys are in the
// open pages alone: so these are told to exchange, and nothing is sent from here.
self.addEventListener("sync", (event) => {
  if (event.tag === "exchange") event.waitUntil(wakePages());
});
self.addEventListener("fetch", (event) => {
  const path = keptPath(event.request);
  if (path !== undefined) event.respondWith(answer(path));
});

// All files are fetched and checked before the first is kept: a version is here whole or not at all.
async function keepAll() {
  const files = await Promise.all(Object.keys(SEAL.files).map(async (path) => [path, await fetchChecked(path)]));
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(files.map(([path, response]) => cache.put(path, response)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function takeCharge() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function wakePages() {
  for (const page of await self.clients.matchAll({ type: "window" })) page.postMessage({ kind: "exchange-now" });
}

// The file of this version that answers a request; none where the network must.
function keptPath(request) {
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin || url.pathname.startsWith("/relay/")) return undefined;
  const path = url.pathname === "/index.html" ? "/" : url.pathname;
  if (path in SEAL.files) return path;
  return request.mode === "navigate" && "/" in SEAL.files ? "/" : undefined;
}

// A file that the browser has thrown away is fetched again, and refused unless it is still this version's.
async function answer(path) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(path);
  if (kept) return kept;
  const response = await fetchChecked(path);
  await cache.put(path, response.clone());
  return response;
}

async function fetchChecked(path) {
  const response = await fetch(path, { cache: "reload", credentials: "same-origin", redirect: "error" });
  if (!response.ok) throw new Error(`${path} could not be fetched (status ${response.status})`);
  const bytes = await response.arrayBuffer();
  if ((await sha256(bytes)) !== SEAL.files[path]) throw new Error(`${path} is not the file that this version was sealed with`);
  return new Response(bytes, { headers: keptHeaders(response.headers) });
}

// The security headers are kept with the file; what told of its way over the wire no longer holds.
function keptHeaders(received) {
  const headers = new Headers(received);
  for (const name of ["content-encoding", "content-length", "transfer-encoding", "date", "etag"]) headers.delete(name);
  return headers;
}

async function sha256(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
