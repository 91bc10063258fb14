"""The pure core: no clock, disk, network or dice."""
