using System.CommandLine;
using System.Globalization;
using Compat.Cli.Commands;

namespace Compat.Cli.Input;

/// <summary>Reads days as they are typed: a date, <c>today</c>, or so many days ago.</summary>
internal static class DayReader
{
    private const int MostDays = 36_500;

    /// <summary>The day that counts as today: that of an option, else the clock's.</summary>
    public static CalendarDate Today(Call call, Option<string?> option) => Read(call, option) ?? Clock();

    /// <summary>The day of an option, counted from the clock's; null where it is left out, or no day, which is reported.</summary>
    public static CalendarDate? Read(Call call, Option<string?> option) => Read(call, option, Clock());

    /// <summary>The day of an option; null where it is left out, or no day, which is reported.</summary>
    public static CalendarDate? Read(Call call, Option<string?> option, CalendarDate today)
    {
        if (call.Parsed.GetValue(option) is not { } text) return null;
        if (CalendarDate.TryParse(text, out var date)) return date;
        if (text == "today") return today;
        if (text.Split(' ') is [var number, "day" or "days", "ago"] && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days <= MostDays) return today.AddDays(-days);
        call.Problems.Add(BadInput.Of("bad-date", $"`{text}` is no date", "write `2026-11-10`, `today` or `10 days ago`", option.Name[2..]));
        return null;
    }

    private static CalendarDate Clock()
    {
        var clock = DateTime.Today;
        return new CalendarDate(clock.Year, clock.Month, clock.Day);
    }
}
