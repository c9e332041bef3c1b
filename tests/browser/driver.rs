//! A driver process that never outlives the tests.

use crate::case::Outcome;
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::Read;
use std::net::{TcpListener, TcpStream};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, Command, Stdio};
use std::time::{Duration, Instant};

/// Starts a command, waits for its input to end, then ends the whole group. The other end of that
/// input is ours, and closes however we go: by returning, by a panic or by being killed.
const GUARD: &str = r#""$@" </dev/null & cat >/dev/null; kill -TERM 0"#;
const PATIENCE: Duration = Duration::from_secs(30);

/// A running driver.
pub struct Driver {
    guard: Child,
    /// Held open for as long as the driver is wanted.
    alive: Option<ChildStdin>,
    /// Where driver and browser write what they have to say.
    log: PathBuf,
}

impl Driver {
    /// Starts `line` with a home of its own, and waits until it listens on `port`.
    pub fn start(
        line: &[String],
        port: u16,
        environment: &[(&str, &str)],
        home: &Path,
    ) -> Outcome<Self> {
        let log = home.join("driver.log");
        let out = File::create(&log)?;
        let mut guard = Command::new("sh")
            .args(["-c", GUARD, "guard"])
            .args(line)
            .env("HOME", home)
            .env("XDG_CONFIG_HOME", home.join("config"))
            .env("XDG_CACHE_HOME", home.join("cache"))
            .env("XDG_DATA_HOME", home.join("data"))
            .envs(environment.iter().copied())
            .stdin(Stdio::piped())
            .stdout(out.try_clone()?)
            .stderr(out)
            .process_group(0)
            .spawn()?;
        let alive = guard.stdin.take();
        let driver = Self { guard, alive, log };
        let began = Instant::now();
        while TcpStream::connect(("127.0.0.1", port)).is_err() {
            if began.elapsed() > PATIENCE {
                return Err(format!("{line:?} does not listen: {}", driver.said(0)?).into());
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        Ok(driver)
    }

    /// What has been said since the given place in the log.
    pub fn said(&self, from: usize) -> Outcome<String> {
        let mut bytes = Vec::new();
        File::open(&self.log)?.read_to_end(&mut bytes)?;
        Ok(String::from_utf8_lossy(bytes.get(from..).unwrap_or_default()).into_owned())
    }

    /// The processes that this driver and its browser have started, with the time each has worked.
    fn processes(&self) -> Outcome<Vec<(u32, u64)>> {
        let mut all = Vec::new();
        for entry in fs::read_dir("/proc")? {
            let name = entry?.file_name();
            let Some(id) = name.to_str().and_then(|name| name.parse::<u32>().ok()) else {
                continue;
            };
            // One that has gone meanwhile has none.
            let Ok(stat) = fs::read_to_string(format!("/proc/{id}/stat")) else { continue };
            // After the name in parentheses, see proc(5): state, parent, and tenth from there utime.
            let rest = stat.rsplit(") ").next().unwrap_or_default();
            let field = |place| rest.split(' ').nth(place).ok_or("stat is shorter than it was");
            all.push((id, field(1)?.parse::<u32>()?, field(11)?.parse::<u64>()?));
        }
        let mut ours = vec![self.guard.id()];
        let mut at = 0;
        while let Some(parent) = ours.get(at).copied() {
            ours.extend(all.iter().filter(|(_, of, _)| *of == parent).map(|(id, ..)| *id));
            at += 1;
        }
        all.retain(|(id, ..)| ours.contains(id));
        Ok(all.into_iter().map(|(id, _, worked)| (id, worked)).collect())
    }

    /// Kills whichever of its processes works hardest for so long.
    pub async fn kill_the_busiest(&self, watched: Duration) -> Outcome {
        let before: BTreeMap<u32, u64> = self.processes()?.into_iter().collect();
        tokio::time::sleep(watched).await;
        let now = self.processes()?.into_iter();
        let more = now.map(|(id, worked)| (worked - before.get(&id).unwrap_or(&0), id));
        let (_, id) = more.max().ok_or("nothing runs")?;
        let killed = Command::new("kill").args(["-KILL", &id.to_string()]).status()?;
        if killed.success() { Ok(()) } else { Err(format!("{id} cannot be killed").into()) }
    }

    /// How much has been said so far.
    pub fn spoken(&self) -> Outcome<usize> {
        Ok(usize::try_from(fs::metadata(&self.log)?.len())?)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        drop(self.alive.take());
        // The guard ends by its own signal; there is nobody left to tell if it has gone already.
        drop(self.guard.wait());
    }
}

/// A port that nobody listens on.
pub fn free_port() -> Outcome<u16> {
    Ok(TcpListener::bind(("127.0.0.1", 0))?.local_addr()?.port())
}
