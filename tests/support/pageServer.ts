import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { extname, join, normalize } from 'node:path'

/** The built page. */
export const APP_FOLDER = new URL('../../build/app/', import.meta.url).pathname

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.wasm': 'application/wasm',
}

export interface PageServer {
  /** http://localhost:port/ */
  readonly address: string
  close(): Promise<void>
}

/** Serves a folder of static files on a free port of this machine. */
export async function servePage(folder = APP_FOLDER): Promise<PageServer> {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname))
    const file = path.endsWith('/') ? `${path}index.html` : path
    readFile(join(folder, file)).then(
      (body) => {
        response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' })
        response.end(body)
      },
      () => {
        response.writeHead(404)
        response.end('not found')
      },
    )
  })
  const port = await listen(server)
  return {
    address: `http://localhost:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen(0, 'localhost', () => {
      const address = server.address()
      if (address && typeof address === 'object') resolve(address.port)
      else reject(new Error('the server has no port'))
    })
  })
}
