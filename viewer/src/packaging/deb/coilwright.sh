#!/bin/sh
# A command is over before the second compiler pays; the window is not.
java=/usr/lib/coilwright/runtime/bin/java
jar=/usr/share/coilwright/coilwright.jar
if [ "${1-}" = view ]; then
    exec $java -Xshare:auto -jar $jar "$@"
fi
exec $java @fast@ -jar $jar "$@"
