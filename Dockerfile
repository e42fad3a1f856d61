# Two stages: build the one binary, then a small system that holds nothing else.
# Build with  docker build -t stillground .
# Run with    docker run --read-only --cap-drop ALL -p 127.0.0.1:8080:8080 -v stillground:/data stillground
FROM rust:1.95-slim-bookworm AS build
WORKDIR /src
COPY . .
# Which source this is, shown in the log and in the figures for a watcher: --build-arg BUILD=$(git rev-parse --short HEAD)
ARG BUILD=unnamed
ENV STILLGROUND_BUILD=$BUILD
RUN cargo build --release --locked -p stillground-server && cp target/release/stillground /stillground

FROM debian:bookworm-slim
RUN useradd --system --uid 10001 --no-create-home stillground && install -d -o stillground -m 0700 /data
COPY --from=build /stillground /usr/local/bin/stillground
USER 10001
VOLUME /data
EXPOSE 8080
ENV STILLGROUND_LISTEN=0.0.0.0:8080 STILLGROUND_DATA=/data
HEALTHCHECK --interval=30s --timeout=3s --start-period=5s \
  CMD ["bash", "-c", "exec 3<>/dev/tcp/127.0.0.1/8080 && printf 'GET /health/live HTTP/1.0\\r\\nHost: localhost\\r\\n\\r\\n' >&3 && head -n 1 <&3 | grep -q ' 200 '"]
CMD ["stillground", "serve"]
