/** Small programs that use the library, each to be run as it stands and to be copied from. */
package coilwright.samples;
