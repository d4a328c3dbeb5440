// A fuzz target without libFuzzer: the seeds as they are, then mutations of them. The same numbers
// give the same run everywhere.
//
//   fuzz_weather_csv SEED_FOLDER DICTIONARY MUTATIONS RANDOM_SEED
#include <algorithm>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

volatile long running = -1;  // number of the mutation, for whoever aborts
volatile unsigned long random_seed = 0;

extern "C" void say_where(int signal) {
  std::fprintf(stderr, "stopped at mutation %ld of random seed %lu\n", running, random_seed);
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> seeds_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) files.push_back(entry);
  std::sort(files.begin(), files.end());
  std::vector<std::string> out;
  for (const auto& file : files) out.push_back(bytes_of(file));
  return out;
}

// Lines of libFuzzer's dictionary: "word", with \xHH.
std::vector<std::string> words_of(const std::filesystem::path& dictionary) {
  std::ifstream in(dictionary);
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) {
    if (line.size() < 2 || line.front() != '"') continue;
    std::string word;
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
      if (line[i] == '\\' && line[i + 1] == 'x') {
        word += static_cast<char>(std::stoi(line.substr(i + 2, 2), nullptr, 16));
        i += 3;
      } else if (line[i] == '\\') {
        word += line[++i];
      } else {
        word += line[i];
      }
    }
    out.push_back(word);
  }
  return out;
}

class Mutator {
 public:
  Mutator(std::vector<std::string> seeds, std::vector<std::string> words, unsigned long seed)
      : seeds_(std::move(seeds)), words_(std::move(words)), random_(seed) {}

  std::string next() {
    std::string text = any(seeds_);
    for (std::size_t n = 1 + below(4); n > 0; --n) mutate(text);
    return text;
  }

 private:
  // std::mt19937_64 gives the same numbers everywhere, the distributions of <random> do not.
  std::size_t below(std::size_t n) { return n == 0 ? 0 : static_cast<std::size_t>(random_() % n); }
  const std::string& any(const std::vector<std::string>& from) { return from[below(from.size())]; }

  std::string line_of(const std::string& text) {
    const std::size_t at = below(text.size() + 1);
    const std::size_t from = at == 0 ? 0 : text.rfind('\n', at - 1) + 1;
    return text.substr(from, text.find('\n', at) - from + 1);
  }

  void mutate(std::string& text) {
    const std::size_t at = below(text.size() + 1);
    switch (below(9)) {
      case 0:
        if (at < text.size()) text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
        return;
      case 1:
        if (at < text.size()) text[at] = static_cast<char>(below(256));
        return;
      case 2:
        text.erase(at, 1 + below(20));
        return;
      case 3:
        text.resize(at);
        return;
      case 4:
        text.insert(at, any(words_));
        return;
      case 5: {
        const std::string& word = any(words_);
        text.replace(at, std::min(word.size(), text.size() - at), word);
        return;
      }
      case 6:
        text.insert(at, line_of(text));
        return;
      case 7: {
        // A digit for a digit: still a file of its kind.
        const std::size_t digit = text.find_first_of("0123456789", at);
        if (digit != std::string::npos) text[digit] = static_cast<char>('0' + below(10));
        return;
      }
      default: {
        const std::string& other = any(seeds_);
        text = text.substr(0, at) + other.substr(below(other.size() + 1));
        return;
      }
    }
  }

  std::vector<std::string> seeds_;
  std::vector<std::string> words_;
  std::mt19937_64 random_;
};

void run(const std::string& text) {
  // A copy of just this size, so that sanitizers see a read beyond its end.
  const std::vector<std::uint8_t> bytes(text.begin(), text.end());
  LLVMFuzzerTestOneInput(bytes.data(), bytes.size());
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 5) {
    std::fprintf(stderr, "%s SEED_FOLDER DICTIONARY MUTATIONS RANDOM_SEED\n", argv[0]);
    return 2;
  }
  const std::vector<std::string> seeds = seeds_in(argv[1]);
  const std::vector<std::string> words = words_of(argv[2]);
  const long mutations = std::atol(argv[3]);
  random_seed = std::strtoul(argv[4], nullptr, 10);
  if (seeds.empty() || words.empty() || mutations < 1) {
    std::fprintf(stderr, "no seeds, no words or no mutations\n");
    return 2;
  }
  for (const int signal : {SIGABRT, SIGSEGV, SIGFPE}) std::signal(signal, say_where);
  for (const std::string& seed : seeds) run(seed);
  Mutator mutator(seeds, words, random_seed);
  for (long n = 0; n < mutations; ++n) {
    running = n;
    run(mutator.next());
  }
  std::printf("%zu seeds, %ld mutations of random seed %lu\n", seeds.size(), mutations,
              static_cast<unsigned long>(random_seed));
  return 0;
}
