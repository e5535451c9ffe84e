using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Finds slips of single records that no rule shows: a day that has not come, a number of two agents, a name of two records.</summary>
internal sealed partial class RecordFaults(KnowledgeData data, IReadOnlyList<Site> sites)
{
    /// <summary>All of them.</summary>
    /// <param name="today">The day of the check; no date is too late where it is none.</param>
    public IEnumerable<Finding> Find(CalendarDate today) => (today == default ? [] : Late(today)).Concat(Numbers()).Concat(Names());

    private IEnumerable<Finding> Late(CalendarDate today)
    {
        foreach (var (place, record) in Records())
        {
            foreach (var (field, date) in Dates(record, ""))
                if (date.CompareTo(today) > 0) yield return Late(place with { Field = field }, date.ToString(), today);
            if (record is Source { Edition: { } edition } && Year().Match(edition) is { Success: true } year
                && int.Parse(year.Value, CultureInfo.InvariantCulture) > int.Parse(today.ToString()[..4], CultureInfo.InvariantCulture))
                yield return Late(place with { Field = "edition" }, year.Value, today);
        }
    }

    private static Finding Late(ProblemPlace place, string date, CalendarDate today) => new()
    {
        Kind = FindingKind.LaterThanToday,
        IsFault = true,
        Message = $"`{place.Id}` is dated `{date}`, and today is {today}",
        Involved = [new(place, "is dated so")],
        Help = "write the day on which it was, not one to come",
    };

    private IEnumerable<Finding> Numbers() => Twice(
        FindingKind.NumberTwice,
        data.Agents.SelectMany(agent => Listed("cas", agent.Cas).Concat(Listed("ec", agent.Ec))
            .Select(one => (Name: one.Text, Place: new ProblemPlace(RecordKind.Agent, agent.Id.Value, one.Field)))),
        (number, later, first) => $"the number `{number}` stands at `{later}` and at `{first}`",
        "a number names one substance: leave it at the one that it names");

    private IEnumerable<Finding> Names()
    {
        return Of(RecordKind.Material, data.Materials, one => one.Id.Value, one => one.AlsoCalled.Prepend(one.Name))
            .Concat(Of(RecordKind.Part, data.Parts, one => one.Id.Value, one => one.AlsoCalled.Prepend(one.Name)))
            .Concat(Of(RecordKind.Agent, data.Agents, one => one.Id.Value, one => one.AlsoCalled.Prepend(one.Name)))
            .Concat(Of(RecordKind.Organism, data.Organisms, one => one.Id.Value, one => one.AlsoCalled.Prepend(one.Name)))
            .Concat(Of(RecordKind.Occasion, data.Occasions, one => one.Id.Value, one => [one.Name]))
            .Concat(Of(RecordKind.Product, sites.SelectMany(site => site.Products), one => one.Id.Value, one => [one.Name]))
            .Concat(Of(RecordKind.Device, sites.SelectMany(site => site.Devices), one => one.Id.Value, one => [one.Name]));

        static IEnumerable<Finding> Of<T>(RecordKind kind, IEnumerable<T> records, Func<T, string> id, Func<T, IEnumerable<string>> names) => Twice(
            FindingKind.NameTwice,
            records.SelectMany(one => names(one)
                .Select((name, i) => (Name: name, Place: new ProblemPlace(kind, id(one), i == 0 ? "name" : $"also-called.{i - 1}")))
                .Prepend((Name: id(one), Place: new ProblemPlace(kind, id(one), "id")))),
            (name, later, first) => $"`{name}` names `{later}` and `{first}`",
            "nobody could tell which is meant: give one of them another name");
    }

    /// <summary>What two records have of which each should have its own, capitals and hyphens aside.</summary>
    private static IEnumerable<Finding> Twice(
        FindingKind kind, IEnumerable<(string Name, ProblemPlace Place)> all, Func<string, string, string, string> message, string help)
    {
        var first = new Dictionary<string, ProblemPlace>(StringComparer.OrdinalIgnoreCase);
        var told = new HashSet<(string, string)>();
        foreach (var (name, place) in all)
        {
            if (first.TryAdd(name.Trim().Replace('-', ' '), place)) continue;
            var other = first[name.Trim().Replace('-', ' ')];
            if (other.Id == place.Id || !told.Add((other.Id, place.Id))) continue;
            yield return new Finding
            {
                Kind = kind,
                IsFault = true,
                Message = message(name, place.Id, other.Id),
                Involved = [new(place, "stands here"), new(other, "stands here too")],
                Help = help,
            };
        }
    }

    private static IEnumerable<(string Field, string Text)> Listed(string field, IReadOnlyList<string> texts) =>
        texts.Select((text, i) => ($"{field}.{i}", text));

    /// <summary>Every record with a date of its own, and where it stands.</summary>
    private IEnumerable<(ProblemPlace Place, object Record)> Records()
    {
        foreach (var source in data.Sources.Concat(sites.SelectMany(site => site.Sources))) yield return (new(RecordKind.Source, source.Id.Value), source);
        foreach (var rule in data.Rules.Concat(sites.SelectMany(site => site.Rules))) yield return (new(RecordKind.Rule, rule.Id.Value), rule);
        foreach (var claim in data.Claims) yield return (new(RecordKind.Claim, claim.Id.Value), claim);
        foreach (var hazard in data.MixingHazards) yield return (new(RecordKind.Mixing, hazard.Id.Value), hazard);
        foreach (var rule in data.PersonRules) yield return (new(RecordKind.PersonRule, rule.Id.Value), rule);
        foreach (var protection in data.Protections) yield return (new(RecordKind.Protection, protection.Id.Value), protection);
        foreach (var product in sites.SelectMany(site => site.Products)) yield return (new(RecordKind.Product, product.Id.Value), product);
        foreach (var device in sites.SelectMany(site => site.Devices)) yield return (new(RecordKind.Device, device.Id.Value), device);
    }

    /// <summary>The dates of a record and of what it holds, by field.</summary>
    private static IEnumerable<(string Field, CalendarDate Date)> Dates(object record, string before)
    {
        foreach (var property in record.GetType().GetProperties(BindingFlags.Instance | BindingFlags.Public))
        {
            var field = before + Words.InKebabCase(property.Name);
            switch (property.GetValue(record))
            {
                case CalendarDate date: yield return (field, date); break;
                case IEnumerable list and not string when property.PropertyType.IsGenericType && IsOurs(property.PropertyType.GetGenericArguments()[0]):
                    var number = 0;
                    foreach (var item in list)
                        foreach (var inner in Dates(item, $"{field}.{number++}.")) yield return inner;
                    break;
                case { } held when IsOurs(property.PropertyType):
                    foreach (var inner in Dates(held, field + ".")) yield return inner;
                    break;
            }
        }
    }

    private static bool IsOurs(Type type) =>
        type.IsClass && type.Assembly == typeof(KnowledgeBase).Assembly && !typeof(Id).IsAssignableFrom(type) && !typeof(DottedId).IsAssignableFrom(type);

    [GeneratedRegex(@"(?<![0-9])(19|20|21)[0-9]{2}(?![0-9])", RegexOptions.CultureInvariant | RegexOptions.RightToLeft)]
    private static partial Regex Year();
}
