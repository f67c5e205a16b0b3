# Reference tables: data/<room>/*.json are validated and turned into constant
# arrays at build time (tools/make_tables.cpp), so that pure rooms need no file.
