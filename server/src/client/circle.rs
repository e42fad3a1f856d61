//! Whom a client is counted as: by itself, and with its neighbours, so that nobody is many by having many addresses.

use std::net::IpAddr;

use super::Client;

/// The machines that are counted together: with version 6 a household, its provider's next larger networks beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Circle {
    network: u128,
    bits: u8,
    unnamed: bool,
}

/// Networks of version 6 that are counted, and how many households' share each has. One line is given a /64, a /56 or a /48.
const NETWORKS: [(u8, u32); 3] = [(64, 1), (56, 4), (48, 16)];

impl Circle {
    /// The circles of an address, each with how many shares it has; the smallest first.
    pub fn of_address(address: IpAddr, unnamed: bool) -> Vec<(Self, u32)> {
        let circle = |network, bits| Self {
            network,
            bits,
            unnamed,
        };
        match address.to_canonical() {
            IpAddr::V4(ip) => vec![(circle(u128::from(ip.to_bits()), 32), 1)],
            IpAddr::V6(ip) => NETWORKS
                .iter()
                .map(|&(bits, shares)| {
                    let network = ip.to_bits() >> (128 - u32::from(bits));
                    (circle(network, bits), shares)
                })
                .collect(),
        }
    }
}

impl Client {
    /// The circles in which this client is counted; none where a setting says that it is not.
    #[must_use]
    pub fn circles(&self) -> Vec<(Circle, u32)> {
        if self.uncounted {
            Vec::new()
        } else {
            Circle::of_address(self.address, self.unnamed)
        }
    }
}

#[cfg(test)]
mod tests {
    use std::net::Ipv4Addr;

    use super::*;

    fn circles(text: &str) -> Vec<(Circle, u32)> {
        Circle::of_address(
            text.parse().unwrap_or(IpAddr::V4(Ipv4Addr::UNSPECIFIED)),
            false,
        )
    }

    #[test]
    fn a_household_is_one_client_and_its_neighbour_another() {
        let first = |text: &str| circles(text)[0];
        assert_eq!(
            first("2001:db8:1:2::1"),
            first("2001:db8:1:2:ffff:ffff:ffff:ffff")
        );
        assert_ne!(first("2001:db8:1:2::1"), first("2001:db8:1:3::1"));
        assert_ne!(first("192.0.2.1"), first("192.0.2.2"));
        assert_eq!(first("192.0.2.1"), first("::ffff:192.0.2.1"));
        assert_ne!(first("0.0.0.1"), first("::1"), "the families do not meet");
    }

    #[test]
    fn whoever_has_a_whole_line_of_households_is_counted_as_the_line_too() {
        let (one, other) = (circles("2001:db8:1:2::1"), circles("2001:db8:1:ff03::1"));
        assert_eq!(one.len(), 3);
        assert_eq!((one[2], one[2].1), (other[2], 16), "the same /48");
        assert_ne!(one[1], other[1], "another /56");
    }

    #[test]
    fn whoever_stands_unnamed_behind_a_proxy_is_not_the_proxy() {
        let proxy = "127.0.0.1".parse().unwrap();
        assert_ne!(
            Circle::of_address(proxy, true),
            Circle::of_address(proxy, false)
        );
    }
}
