//! A server on this machine, for pages that are not opened from disk. What it is asked is kept. As many
//! servers do, it says that its answers may be kept for an hour.

use crate::case::Outcome;
use std::cell::RefCell;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpListener;

/// What an address below the server holds: its media type and its bytes.
pub type Answer = Option<(&'static str, Vec<u8>)>;

/// A server, until it is dropped.
pub struct Server {
    listener: TcpListener,
    /// Its address, with a slash at the end.
    pub address: String,
    asked: RefCell<Vec<String>>,
}

impl Server {
    /// Listens on a free port.
    pub async fn start() -> Outcome<Self> {
        let listener = TcpListener::bind("127.0.0.1:0").await?;
        let address = format!("http://{}/", listener.local_addr()?);
        Ok(Self { listener, address, asked: RefCell::default() })
    }

    /// The first lines of all requests so far.
    pub fn asked(&self) -> Vec<String> {
        self.asked.borrow().clone()
    }

    /// Answers as long as a visit lasts; `find` is asked with what follows the first slash.
    pub async fn during<T>(
        &self,
        find: impl Fn(&str) -> Answer,
        visit: impl Future<Output = Outcome<T>>,
    ) -> Outcome<T> {
        tokio::select! { outcome = visit => outcome, lost = self.serve(find) => Err(lost) }
    }

    async fn serve(&self, find: impl Fn(&str) -> Answer) -> Box<dyn std::error::Error> {
        while let Ok((mut stream, _)) = self.listener.accept().await {
            let mut head = vec![0; 4096];
            let length = stream.read(&mut head).await.unwrap_or_default();
            let head = String::from_utf8_lossy(&head[..length]).into_owned();
            // Browsers open connections ahead that they do not use.
            let Some(line) = head.lines().next() else { continue };
            self.asked.borrow_mut().push(line.to_owned());
            let path = line.split(' ').nth(1).unwrap_or_default().trim_start_matches('/');
            let (status, (kind, bytes)) = match find(path) {
                Some(found) => ("200 OK", found),
                None => ("404 Not Found", ("text/plain", Vec::new())),
            };
            let head = format!(
                "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\n\
                 Cache-Control: max-age=3600\r\nConnection: close\r\n\r\n",
                bytes.len()
            );
            // A browser that has gone wants no answer.
            drop(stream.write_all(head.as_bytes()).await);
            drop(stream.write_all(&bytes).await);
        }
        "nothing is served any more".into()
    }
}
