//! The one service outside that may be asked, where the host names one.

use std::net::IpAddr;

use super::network::is_host;

/// A service that knows the air's past years at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClimateService {
    /// Whether it is asked over TLS; only one on this machine is not.
    pub https: bool,
    /// Its name.
    pub host: String,
    /// Its port.
    pub port: u16,
    target: String,
    /// Its name and licence, as they are to stand beside what it says.
    pub source: String,
}

/// What stands in the address for the place and the years.
const PLACES: [&str; 4] = ["{latitude}", "{longitude}", "{start}", "{end}"];

impl ClimateService {
    /// Reads an address with places for latitude, longitude, first and last day.
    ///
    /// # Errors
    /// What would be right.
    pub fn parse(address: &str, source: Option<&str>) -> Result<Self, String> {
        let example = "write https://climate.example/v1/archive?latitude={latitude}&longitude={longitude}&start_date={start}&end_date={end}&daily=temperature_2m_mean,wind_gusts_10m_max";
        let (scheme, rest) = address.split_once("://").ok_or(example)?;
        let (authority, path) = rest.split_once('/').ok_or(example)?;
        if !is_host(authority) || !PLACES.iter().all(|place| path.contains(place)) {
            return Err(example.to_owned());
        }
        let plain = |b: u8| b.is_ascii_graphic() && !b"\"<>\\^`|#".contains(&b);
        if !path.bytes().all(plain) {
            return Err(format!("signs stand in it that no address has; {example}"));
        }
        let (host, port) = match authority
            .rsplit_once(':')
            .filter(|_| !authority.ends_with(']'))
        {
            Some((host, port)) => (host, port.parse().ok()),
            None => (authority, None),
        };
        let host = host.trim_matches(['[', ']']).to_ascii_lowercase();
        let here = host.parse::<IpAddr>().is_ok_and(|ip| ip.is_loopback());
        let https = match scheme {
            "https" => true,
            "http" if here => false,
            _ => {
                return Err(
                    "it has to be https, unless it is an address of this very machine".to_owned(),
                );
            }
        };
        let source = source
            .map(str::trim)
            .filter(|source| !source.is_empty())
            .unwrap_or(&host)
            .to_owned();
        Ok(Self {
            https,
            port: port.unwrap_or(if https { 443 } else { 80 }),
            host,
            target: format!("/{path}"),
            source,
        })
    }

    /// What is asked of it.
    #[must_use]
    pub fn target(
        &self,
        latitude_deg: f64,
        longitude_deg: f64,
        first_year: i16,
        last_year: i16,
    ) -> String {
        self.target
            .replace("{latitude}", &format!("{latitude_deg:.2}"))
            .replace("{longitude}", &format!("{longitude_deg:.2}"))
            .replace("{start}", &format!("{first_year:04}-01-01"))
            .replace("{end}", &format!("{last_year:04}-12-31"))
    }

    /// Its name with its port, for the head of a request.
    #[must_use]
    pub fn authority(&self) -> String {
        let host = if self.host.contains(':') {
            format!("[{}]", self.host)
        } else {
            self.host.clone()
        };
        format!("{host}:{}", self.port)
    }

    /// Whether the host named an address of this very machine: that one is meant. A name that leads inside is not.
    #[must_use]
    pub fn is_literal(&self) -> bool {
        self.host.parse::<IpAddr>().is_ok_and(|ip| ip.is_loopback())
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    const QUERY: &str = "v1?a={latitude}&b={longitude}&c={start}&d={end}";

    #[test]
    fn a_service_is_asked_over_tls_unless_it_is_this_very_machine() {
        let service = ClimateService::parse(
            &format!("https://climate.example/{QUERY}"),
            Some("Open archive, CC BY"),
        )
        .unwrap();
        assert_eq!(
            (service.port, service.source.as_str(), service.is_literal()),
            (443, "Open archive, CC BY", false)
        );
        assert_eq!(
            service.target(52.123, -1.5, 1995, 2024),
            "/v1?a=52.12&b=-1.50&c=1995-01-01&d=2024-12-31"
        );
        assert!(ClimateService::parse(&format!("http://127.0.0.1:9/{QUERY}"), None).is_ok());
        for wrong in [
            "http://climate.example/",
            "http://10.0.0.1/",
            "http://localhost/",
            "ftp://a/",
            "https://a b/",
            "https://me@a/",
        ] {
            assert!(
                ClimateService::parse(&format!("{wrong}{QUERY}"), None).is_err(),
                "{wrong}"
            );
        }
        assert!(
            ClimateService::parse("https://climate.example/v1", None).is_err(),
            "no place for the place"
        );
        assert!(
            ClimateService::parse(&format!("https://climate.example/{QUERY}\r\nx: y"), None)
                .is_err()
        );
    }
}
