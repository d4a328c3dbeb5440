// Not built: the include check must find the line.
const char* home = std::getenv("HOME");
