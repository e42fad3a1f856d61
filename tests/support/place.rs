//! A place for plans: a folder, and either a SQLite file in it or a PostgreSQL database of its own.

use std::path::Path;
use std::sync::Arc;

use stillground_server::config::Settings;
use tempfile::TempDir;

use crate::postgres::{Cluster, shared};

/// Changes a SQLite file.
///
/// # Panics
/// When there is none or it refuses.
pub fn tamper_file(file: &Path, sql: &str) {
    use sqlx::{
        AssertSqlSafe, Connection, Executor, SqliteConnection, sqlite::SqliteConnectOptions,
    };
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("a runtime");
    runtime.block_on(async {
        let options = SqliteConnectOptions::new().filename(file);
        let mut connection = SqliteConnection::connect_with(&options)
            .await
            .expect("a store");
        connection
            .execute(AssertSqlSafe(sql.to_owned()))
            .await
            .expect("the change");
        connection.close().await.expect("an end");
    });
}

/// A place for plans; it is gone when it is dropped.
pub struct Place {
    folder: TempDir,
    database: Option<(String, Arc<Cluster>)>,
}

impl Place {
    /// A new folder with a SQLite file.
    ///
    /// # Panics
    /// When no folder can be made.
    #[must_use]
    pub fn on_sqlite() -> Self {
        Self {
            folder: TempDir::new().expect("a folder for the test"),
            database: None,
        }
    }

    /// A new database on the server that the tests share.
    #[must_use]
    pub fn on_postgres() -> Self {
        Self::on_cluster(shared())
    }

    /// A new database on a server.
    #[must_use]
    pub fn on_cluster(cluster: Arc<Cluster>) -> Self {
        let url = cluster.database();
        Self::at(cluster, url)
    }

    /// A database on a server.
    #[must_use]
    pub fn at(cluster: Arc<Cluster>, url: String) -> Self {
        Self {
            database: Some((url, cluster)),
            ..Self::on_sqlite()
        }
    }

    /// The settings of a service at this place; several may be started.
    #[must_use]
    pub fn settings(&self) -> Settings {
        let database_url = self.database.as_ref().map(|(url, _)| url.clone());
        Settings {
            data: Some(self.folder().join("data")),
            database_url,
            ..Settings::default()
        }
    }

    /// The same settings as flags of the command line.
    ///
    /// # Panics
    /// When its folder's name is no text.
    #[must_use]
    pub fn flags(&self) -> Vec<String> {
        let data = self
            .folder()
            .join("data")
            .to_str()
            .expect("a name")
            .to_owned();
        let database = self
            .database
            .iter()
            .flat_map(|(url, _)| ["--database-url".to_owned(), url.clone()]);
        ["--data".to_owned(), data]
            .into_iter()
            .chain(database)
            .collect()
    }

    /// Its folder.
    #[must_use]
    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Changes the store behind the back of whatever runs on it.
    ///
    /// # Panics
    /// When the database refuses.
    pub fn tamper(&self, sql: &str) {
        match &self.database {
            Some((url, cluster)) => drop(cluster.ask(url, sql)),
            None => tamper_file(&self.folder().join("data/stillground.sqlite"), sql),
        }
    }

    /// Its server and the URL of its database, when it has one.
    #[must_use]
    pub fn database(&self) -> Option<(&Cluster, &str)> {
        self.database
            .as_ref()
            .map(|(url, cluster)| (&**cluster, url.as_str()))
    }
}
