#!/bin/sh
# The launcher that jpackage makes asks the package manager twice where it is, which takes longer than most commands do.
here=$0
while :; do
    case $here in
    */*) ;;
    *) here=./$here ;;
    esac
    [ -L "$here" ] || break
    to=$(readlink "$here")
    case $to in
    /*) here=$to ;;
    *) here=${here%/*}/$to ;;
    esac
done
image=$(cd "${here%/*}/.." && pwd -P)
java=$image/lib/runtime/bin/java
jar=$image/lib/app/coilwright.jar
# A command is over before the second compiler pays; the window is not.
if [ "${1-}" = view ]; then
    exec "$java" -Xshare:auto -jar "$jar" "$@"
fi
exec "$java" @fast@ -jar "$jar" "$@"
