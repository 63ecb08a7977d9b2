"""What is built on measured positions: parts placed on connections, with channels, room and paths of insertion."""
