Coilwright is licensed under the Apache License 2.0 (META-INF/LICENSE in the jar). It contains these libraries and
fonts. The texts of their licences and their notices lie beside this list. JGraphT is used under the EPL-2.0. The
source of each library is published by its makers at the place given, and in Maven Central under its coordinates.

DejaVu Sans and DejaVu Sans Bold 2.37
  licence  Bitstream Vera and Arev font licence (coilwright/drawing/fonts/LICENSE-DejaVu.txt)
  home     https://dejavu-fonts.github.io/
<#list dependencyMap as entry>
<#assign part = entry.getKey()>

${part.groupId}:${part.artifactId} ${part.version}
  name     ${part.name}
  licence  <#list entry.getValue() as licence>${licence}<#sep> or </#list>
  home     ${(part.url!)?trim}
</#list>
