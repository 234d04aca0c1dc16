"""What a change does, told in sections: dangers first."""
