using Microsoft.CodeAnalysis;

namespace Compat.Generators;

/// <summary>Writes how each record is read from the keys of a data file and written under them.</summary>
/// <remarks>
/// A method that RecordReader has already goes first: <c>ReadRuleTarget</c> for the field Target of a Rule, <c>ReadDutys</c> for each list of duties,
/// <c>ReadExposureBox</c> for each box, <c>CheckRule</c> for what the keys of a rule must hold to together. RecordWriter has the same with <c>Write</c>.
/// </remarks>
internal sealed class FileText(Compilation compilation)
{
    private readonly INamedTypeSymbol _reader = compilation.GetTypeByMetadataName("Compat.Curation.Reading.RecordReader")!;
    private readonly INamedTypeSymbol _writer = compilation.GetTypeByMetadataName("Compat.Curation.Writing.RecordWriter")!;

    public string Reader(params INamedTypeSymbol[] roots)
    {
        var text = new CodeText("using Compat.Curation.Text;", "", "namespace Compat.Curation.Reading;");
        text.Open("sealed partial class RecordReader");
        foreach (var record in Reachable(_reader, "Read", roots)) Reader(text, record);
        text.Close();
        return text.ToString();
    }

    public string Writer(params INamedTypeSymbol[] roots)
    {
        var text = new CodeText("using Compat.Curation.Text;", "", "namespace Compat.Curation.Writing;");
        text.Open("sealed partial class RecordWriter");
        foreach (var record in Reachable(_writer, "Write", roots)) Writer(text, record);
        text.Close();
        return text.ToString();
    }

    /// <summary>The records that no method is there for yet.</summary>
    private static IEnumerable<RecordModel> Reachable(INamedTypeSymbol type, string verb, INamedTypeSymbol[] roots) =>
        RecordModel.Reachable(one => Has(type, verb + one.Name) || Has(type, $"{verb}{one.Name}s"), roots)
            .Where(one => !roots.Contains(one.Type, SymbolEqualityComparer.Default));

    private void Reader(CodeText text, RecordModel record)
    {
        text.Line("");
        text.Line("/// <summary>Reads the record; null where what it cannot be without cannot be read.</summary>");
        text.Line("/// <param name=\"fields\">Its keys.</param>");
        text.Line("/// <param name=\"agent\">The agent whose strengths it states, of the record around it; null where there is none.</param>");
        text.Open($"public {record.Type}? Read{record.Name}(RecordFields fields, string? agent = null)");
        if (Has(_reader, "Check" + record.Name)) text.Line($"Check{record.Name}(fields);");
        // What the record cannot be without is read first, the agent before what is stated in its unit.
        var first = record.Fields.Where(one => IsVital(record, one) || IsAgent(record, one)).OrderBy(one => !IsAgent(record, one)).ToArray();
        foreach (var field in first)
        {
            text.Line($"var {Local(field)} = {Read(record, field)};");
            if (IsAgent(record, field)) text.Line($"agent = {Local(field)}?.Value;");
        }

        var vital = first.Where(one => IsVital(record, one)).Select(one => $"{Local(one)} is null").ToArray();
        if (vital.Length > 0) text.Line($"if ({string.Join(" || ", vital)}) return null;");
        if (record.Constructor is { } constructor)
        {
            var fields = constructor.Parameters.Select(one => record.Fields.First(field => field.Name == one.Name));
            text.Line($"return new({string.Join(", ", fields.Select(one => first.Contains(one) ? Taken(one) : Read(record, one)))});");
        }
        else
        {
            text.Open("return new()");
            foreach (var field in record.Fields) text.Line($"{field.Name} = {(first.Contains(field) ? Taken(field) : Read(record, field))},");
            text.Close(";");
        }

        text.Close();
    }

    private string Read(RecordModel record, FieldModel field)
    {
        if (Has(_reader, $"Read{record.Name}{field.Name}")) return $"Read{record.Name}{field.Name}(fields, agent)";
        var (from, key) = (field.Within is { } within ? $"fields.Within(\"{within}\")" : "fields", $"\"{field.Key}\"");
        var type = field.Item;
        if (field.IsList)
        {
            var orNone = field.IsNullable ? "" : " ?? []";
            if (Has(_reader, $"Read{type.Name}s")) return $"Read{type.Name}s({from}, {key}, agent){orNone}";
            if (type.TypeKind == TypeKind.Enum) return $"{from}.WordList<{type}>({key}){orNone}";
            if (RecordModel.IsId(type)) return $"{from}.Ids({key}, static text => new {type}(text))";
            return type.SpecialType == SpecialType.System_String ? $"{from}.Texts({key})"
                : $"{from}.Records({key}).Select(one => Read{type.Name}(one, agent)).OfType<{type}>().ToArray()";
        }

        if (Has(_reader, $"Read{type.Name}")) return $"Read{type.Name}({from}, {key}, agent){OrNew(record, field)}";
        if (type.TypeKind == TypeKind.Enum) return $"{from}.Word<{type}>({key}){(field.IsNullable || IsVital(record, field) ? "" : " ?? default")}";
        if (RecordModel.IsId(type)) return $"{from}.Id({key}, static text => new {type}(text))";
        if (RecordModel.IsRecord(type))
            return $"({from}.Record({key}) is {{ }} its{field.Name} ? Read{type.Name}(its{field.Name}, agent) : null){OrNew(record, field)}";
        return type.Name switch
        {
            "String" => $"{from}.{(field.IsNullable ? "Text" : "NeededText")}({key})",
            "Boolean" when field.Words is { } words => field.IsNullable
                ? $"{from}.Text({key}) switch {{ \"{words.Yes}\" => true, \"{words.No}\" => false, _ => null }}" : $"{from}.Text({key}) == \"{words.Yes}\"",
            "Boolean" => $"{from}.{(field.IsNullable ? "Flag" : "Yes")}({key})",
            "Int32" => $"{from}.Number({key})",
            "Decimal" => field.Quantity is { } quantity ? $"{from}.MeasuredFigure({key}, Measure.{quantity})" : $"{from}.PlainNumber({key})",
            "CalendarDate" => $"{from}.Date({key}){(field.IsNullable ? "" : " ?? RecordFields.NoDate")}",
            "Interval" when field.Quantity == "Strength" => $"boxes.StrengthOf({from}, {StrengthOf(field)}, {key}, takesBare: {Word(field.TakesBare)})",
            "Interval" when field.Quantity == "Dilution" => $"{from}.Dilution({key})",
            "Interval" => $"{from}.Range({key}, Measure.{field.Quantity})",
            _ => $"{from}.{type.Name}({key})",
        };
    }

    private void Writer(CodeText text, RecordModel record)
    {
        text.Line("");
        text.Line("/// <summary>Writes the record under its keys.</summary>");
        text.Line("/// <param name=\"to\">Where it is written.</param>");
        text.Line("/// <param name=\"x\">The record.</param>");
        text.Line("/// <param name=\"agent\">The agent whose strengths it states, of the record around it; null where there is none.</param>");
        text.Open($"public void Write{record.Name}(RecordText to, {record.Type} x, Compat.AgentId? agent = null)");
        if (record.Fields.FirstOrDefault(one => IsAgent(record, one)) is { } named) text.Line($"agent = x.{named.Name};");
        foreach (var field in record.Fields)
            text.Line((Has(_writer, $"Write{record.Name}{field.Name}") ? $"Write{record.Name}{field.Name}(to, x, agent)" : Write(record, field)) + ";");
        text.Close();
    }

    private string Write(RecordModel record, FieldModel field)
    {
        var (to, key, x) = (field.Within is { } within ? $"to.Within(\"{within}\")" : "to", $"\"{field.Key}\"", "x." + field.Name);
        var type = field.Item;
        if (field.IsList)
        {
            if (Has(_writer, $"Write{type.Name}s")) return $"Write{type.Name}s({to}, {key}, {x}, agent)";
            if (RecordModel.IsRecord(type))
                return $"{to}.Records({key}, {x}, (text, one) => Write{type.Name}(text, one, agent), inLines: {Word(IsBlock(type))})";
            var each = type.TypeKind == TypeKind.Enum ? "Words.Of(one)" : RecordModel.IsId(type) || type.Name == "TestCode" ? "one.Value" : "one";
            return $"{to}.{(field.IsNullable ? "MaybeList" : "List")}({key}, {x}{(field.IsNullable ? "?" : "")}.Select(one => {each}))";
        }

        if (Has(_writer, $"Write{type.Name}")) return $"Write{type.Name}({to}, {key}, {x}, agent)";
        if (type.TypeKind == TypeKind.Enum) return $"{to}.Field({key}, {(field.IsNullable ? $"Word({x})" : $"Words.Of({x})")})";
        if (RecordModel.IsId(type) || type.Name == "TestCode") return $"{to}.Field({key}, {x}?.Value)";
        if (RecordModel.IsRecord(type)) return $"{to}.Record({key}, {x}, (text, one) => Write{type.Name}(text, one, agent))";
        return type.Name switch
        {
            "String" => $"{to}.Field({key}, {x})",
            "Boolean" when field.Words is { } words =>
                $"{to}.Field({key}, {x} switch {{ true => {Quoted(words.Yes)}, false => {Quoted(words.No)}{(field.IsNullable ? ", _ => null" : "")} }})",
            "Boolean" => field.IsNullable || field.Property.IsRequired ? $"{to}.Truth({key}, {x})" : $"{to}.Flag({key}, {x})",
            "Interval" when field.Quantity == "Strength" =>
                $"{to}.Raw({key}, ExposureYaml.Range({x}, PercentOf({(field.StrengthOf is { } other ? OfKey(record, other) : "agent")})))",
            "Interval" => $"{to}.Raw({key}, ExposureYaml.Range({x}, Measure.{field.Quantity}))",
            "Decimal" => $"{to}.Raw({key}, ExposureYaml.Figure({x}, {(field.Quantity is { } quantity ? $"Measure.{quantity}" : "null")}))",
            "CalendarDate" => $"{to}.Field({key}, {x}{(field.IsNullable ? "?" : "")}.ToString())",
            "Int32" => $"{to}.Raw({key}, ExposureYaml.Number({x}))",
            _ => $"{to}.Field({key}, {x}{(field.Type.IsValueType && !field.IsNullable ? "" : "?")}.ToString())",
        };
    }

    /// <summary>Whether the record is nothing without the field: what names it or what it speaks of, and what only its constructor takes.</summary>
    private bool IsVital(RecordModel record, FieldModel field)
    {
        if (field.IsNullable || field.IsList) return false;
        if (Has(_reader, $"Read{record.Name}{field.Name}")) return !field.Type.IsValueType;
        return RecordModel.IsId(field.Type) || field.Type.Name is "TestCode" or "AirConcentration"
            || (record.Constructor is not null && field.Type.IsValueType) || (record.Kind is not null && field == record.Fields[0]);
    }

    private static bool IsAgent(RecordModel record, FieldModel field) =>
        field.Type.Name == "AgentId" && (field.Name == "Agent" || (field.Name == "Id" && record.Name == "AgentClass"));

    /// <summary>Whether records of a list stand each on lines of their own: those with an id and those with lists.</summary>
    private static bool IsBlock(ITypeSymbol type) => RecordModel.Of(type).Fields.Any(one => one.IsList || one.Name == "Id");

    private static string OrNew(RecordModel record, FieldModel field) =>
        field.IsNullable || field.Property.IsRequired || record.Constructor is not null ? "" : " ?? new()";

    private static string OfKey(RecordModel record, string key) => "x." + record.Fields.First(one => one.Key == key).Name;

    private static string Word(bool isSo) => isSo ? "true" : "false";

    private static string Local(FieldModel field) => char.ToLowerInvariant(field.Name[0]) + field.Name.Substring(1) + "Read";

    private static string Taken(FieldModel field) => Local(field) + (field.Type.IsValueType && !field.IsNullable ? ".Value" : "");

    private static string StrengthOf(FieldModel field) => field.StrengthOf is { } other ? $"fields.Text(\"{other}\")" : "agent";

    private static string Quoted(string? word) => string.IsNullOrEmpty(word) ? "null" : $"\"{word}\"";

    private static bool Has(INamedTypeSymbol type, string method) => type.GetMembers(method).Any();
}
