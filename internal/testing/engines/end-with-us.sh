#!/bin/sh
# Runs a program ($SHEDBOOK_RUNS, or the first argument where that is not set) in a group of processes of its own, and
# ends the whole group when whoever started it is gone, however that ended: then the other end of standard input closes.
exec 9<&0
[ -n "$SHEDBOOK_RUNS" ] || { SHEDBOOK_RUNS=$1; shift; }
"$SHEDBOOK_RUNS" "$@" </dev/null 9<&- &
program=$!
{ cat <&9 >/dev/null; kill -KILL 0; } &
wait $program
kill -KILL 0
