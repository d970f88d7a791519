#!/bin/sh
cd "$(dirname "$0")" || exit 1
exec ./program/plankfit-page --on-network "$@"
