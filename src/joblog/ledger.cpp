// Booking into the log, and entries out of it.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <utility>

#include "joblog/books.hpp"
#include "joblog/entry_rows.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"

namespace wetout::joblog {

base::Result<Booked> Log::book(const NewEntry& entry) {
  return impl_->guarded([&]() -> base::Result<Booked> {
    if (impl_->books) return impl_->books->book(entry);
    Transaction transaction(impl_->db(), Transaction::Kind::immediate);
    auto booked = Books(impl_->db(), Books::Mode::write).book(entry);
    if (booked) transaction.commit();
    return booked;
  });
}

base::Result<std::vector<Booked>> Log::foresee_bookings(
    const std::vector<NewEntry>& entries) const {
  return impl_->guarded([&]() -> base::Result<std::vector<Booked>> {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    Books books(impl_->db(), Books::Mode::foresee);
    std::vector<Booked> all;
    for (const NewEntry& entry : entries) {
      auto booked = books.book(entry);
      if (!booked) return tl::unexpected(booked.error());
      all.push_back(std::move(*booked));
    }
    return all;
  });
}

base::Result<void> Log::together(const std::function<base::Result<void>()>& work) {
  return impl_->guarded([&]() -> base::Result<void> {
    if (impl_->books) return work();
    Transaction transaction(impl_->db(), Transaction::Kind::immediate);
    impl_->books = std::make_shared<Books>(impl_->db(), Books::Mode::write);
    struct Close {
      Impl& impl;
      ~Close() { impl.books.reset(); }
    };
    auto done = [&] {
      const Close close{*impl_};
      return work();
    }();
    if (done) transaction.commit();
    return done;
  });
}

std::optional<std::string> Log::currency() const {
  return impl_->guarded([&]() -> std::optional<std::string> {
    SQLite::Statement row(impl_->db(), "SELECT code FROM currency");
    if (!row.executeStep()) return std::nullopt;
    return row.getColumn(0).getString();
  });
}

std::vector<EntryRow> Log::entries(const EntryFilter& filter) const {
  std::vector<EntryRow> entries;
  each_entry(filter, [&](const EntryRow& entry) { entries.push_back(entry); });
  return entries;
}

void Log::each_entry(const EntryFilter& filter,
                     const std::function<void(const EntryRow&)>& read) const {
  impl_->guarded([&] { read_entries(impl_->db(), filter, read); });
}

}  // namespace wetout::joblog
