using System.Globalization;

namespace Compat.Model;

/// <summary>A date without time, written year-month-day (ISO 8601).</summary>
public readonly record struct CalendarDate : IComparable<CalendarDate>
{
    private readonly DateTime _day;

    /// <summary>Makes a date; <see cref="ArgumentOutOfRangeException"/> where there is no such day.</summary>
    public CalendarDate(int year, int month, int day) => _day = new DateTime(year, month, day);

    /// <summary>Reads <c>2026-11-25</c>; nothing else is taken.</summary>
    /// <returns>Whether the text is a date.</returns>
    public static bool TryParse(string? text, out CalendarDate date)
    {
        date = default;
        if (!DateTime.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return false;
        date = new CalendarDate(day.Year, day.Month, day.Day);
        return true;
    }

    /// <summary>The date so many days later.</summary>
    /// <param name="days">How many; below 0 for earlier.</param>
    public CalendarDate AddDays(int days)
    {
        var day = _day.AddDays(days);
        return new CalendarDate(day.Year, day.Month, day.Day);
    }

    /// <summary>The date so many whole days later; the last that there is where none is so late.</summary>
    internal CalendarDate Later(decimal days)
    {
        var most = (DateTime.MaxValue.Date - _day).Days;
        return AddDays(days < most ? (int)decimal.Floor(days) : most);
    }

    /// <summary>Orders dates, earlier first.</summary>
    public int CompareTo(CalendarDate other) => _day.CompareTo(other._day);

    /// <summary>The date as it is written.</summary>
    public override string ToString() => _day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Whether one date is earlier than another.</summary>
    public static bool operator <(CalendarDate left, CalendarDate right) => left.CompareTo(right) < 0;

    /// <summary>Whether one date is later than another.</summary>
    public static bool operator >(CalendarDate left, CalendarDate right) => left.CompareTo(right) > 0;

    /// <summary>Whether one date is not later than another.</summary>
    public static bool operator <=(CalendarDate left, CalendarDate right) => left.CompareTo(right) <= 0;

    /// <summary>Whether one date is not earlier than another.</summary>
    public static bool operator >=(CalendarDate left, CalendarDate right) => left.CompareTo(right) >= 0;
}
