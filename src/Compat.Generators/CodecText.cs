using Microsoft.CodeAnalysis;

namespace Compat.Generators;

/// <summary>Writes how each record is written into a snapshot and read from it, field by field in the order of declaration.</summary>
/// <remarks>A record that SnapshotWriter or SnapshotReader has a method for already is left out: it is made in a way of its own.</remarks>
internal static class CodecText
{
    /// <summary>Of each type of value: the method that writes one, the method that reads one, and the two for one that may be missing.</summary>
    private static readonly Dictionary<string, (string Write, string Read, string WriteMaybe, string ReadMaybe)> Values = new()
    {
        ["String"] = ("Must", "Text", "Text", "MaybeText"),
        ["Boolean"] = ("Flag", "Flag", "MaybeFlag", "MaybeFlag"),
        ["Int32"] = ("Whole", "Whole", "MaybeWhole", "MaybeWhole"),
        ["Decimal"] = ("Figure", "Figure", "Figure", "MaybeFigure"),
        ["CalendarDate"] = ("Date", "Date", "Date", "MaybeDate"),
        ["Interval"] = ("Range", "Range", "MaybeRange", "MaybeRange"),
        ["AxisLimit"] = ("Limit", "Limit", "Limit", "Limit"),
        ["MethodLimit"] = ("Methods", "MethodLimit", "", ""),
        ["MethodSet"] = ("Methods", "Methods", "", ""),
        ["StrengthUnit"] = ("Unit", "", "Unit", "MaybeUnit"),
        ["Strength"] = ("Strength", "", "Strength", ""),
        ["TestCode"] = ("Code", "Code", "", ""),
        ["AirConcentration"] = ("Concentration", "Concentration", "", ""),
        ["SerialRange"] = ("Serials", "", "", ""),
    };

    public static bool IsValue(string type) => Values.ContainsKey(type);

    public static string Writer(Compilation compilation, IReadOnlyList<RecordModel> records)
    {
        var byHand = compilation.GetTypeByMetadataName("Compat.Snapshots.SnapshotWriter")!.GetMembers("Write").OfType<IMethodSymbol>().ToArray();
        var text = new CodeText("using Compat.Validation;", "", "namespace Compat.Snapshots;");
        text.Open("sealed partial class SnapshotWriter");
        foreach (var record in records.Where(one => one.Name != "KnowledgeData" && !IsByHand(one)))
        {
            text.Line("");
            text.Open($"private void Write({record.Type} x)");
            if (record.Kind is { } kind) text.Line($"At(RecordKind.{kind}, {KeyText(record)});");
            foreach (var field in Legacy.Order(record)) text.Line(Written(field, record));
            text.Close();
        }

        text.Close();
        return text.ToString();

        bool IsByHand(RecordModel one) => byHand.Any(method => SymbolEqualityComparer.Default.Equals(method.Parameters[0].Type, one.Type));
    }

    public static string Reader(Compilation compilation, IReadOnlyList<RecordModel> records)
    {
        var reader = compilation.GetTypeByMetadataName("Compat.Snapshots.SnapshotReader")!;
        var text = new CodeText("using Compat.Validation;", "", "namespace Compat.Snapshots;");
        text.Open("sealed partial class SnapshotReader");
        foreach (var record in records.Where(one => !reader.GetMembers("Read" + one.Name).Any() && one.Name != "KnowledgeData"))
        {
            if (record.Constructor is { } constructor)
            {
                var arguments = constructor.Parameters.Select(one => Read(record.Fields.First(field => field.Name == one.Name), record));
                text.Line("");
                text.Line($"public {record.Type} Read{record.Name}() => new({string.Join(", ", arguments)});");
                continue;
            }

            text.Line("");
            text.Open($"public {record.Type} Read{record.Name}() => new()");
            foreach (var field in Legacy.Order(record)) text.Line($"{field.Name} = {Read(field, record)},");
            text.Close(";");
        }

        text.Close();
        return text.ToString();
    }

    private static string KeyText(RecordModel record) =>
        record.Fields[0].Type.TypeKind == TypeKind.Enum ? $"Words.Of(x.{record.Key})" : $"x.{record.Fields[0].Name}?.Value ?? \"\"";

    private static string Written(FieldModel field, RecordModel record)
    {
        var value = "x." + field.Name;
        if (record.Name == "Claim" && field.Name == "When") return "In(x.When, WriteClaimBox);";
        if (!field.IsList) return Written(field.Type, field.IsNullable, value, "", Legacy.IsCoded(field, record)) + ";";
        var item = Written(field.Item, false, "item", ", \"\"", Legacy.IsCoded(field, record));
        var each = RecordModel.IsRecord(field.Item) ? "Write" : $"item => {item}";
        if (field.IsNullable) return $"Maybe({value}, list => List(list, {each}, \"\"));";
        return field.Has("UnorderedAttribute") ? $"Records({value}, one => one.{RecordModel.Of(field.Item).Key}, {each});" : $"List({value}, {each});";
    }

    private static string Written(ITypeSymbol type, bool isNullable, string value, string what, bool isCoded)
    {
        if (type.TypeKind == TypeKind.Enum)
        {
            if (isCoded) return $"{(isNullable ? "Member" : "Coded")}({value}{what})";
            return $"Word<{type}>({value}{what})";
        }

        if (RecordModel.IsId(type)) return $"{(isNullable ? "Id" : "Must")}({value}{what})";
        if (Values.TryGetValue(type.Name, out var names)) return $"{(isNullable ? names.WriteMaybe : names.Write)}({value}{what})";
        return $"{(isNullable ? "Maybe" : "In")}({value}, Write)";
    }

    private static string Read(FieldModel field, RecordModel record)
    {
        if (!field.IsList) return Read(field.Type, field.IsNullable, Legacy.IsCoded(field, record));
        var item = Read(field.Item, false, Legacy.IsCoded(field, record));
        var list = item.EndsWith("()") && item.IndexOf('(') == item.Length - 2 ? $"List({item.Substring(0, item.Length - 2)})" : $"List(() => {item})";
        return field.IsNullable ? $"Maybe(() => {list})" : list;
    }

    private static string Read(ITypeSymbol type, bool isNullable, bool isCoded)
    {
        if (type.TypeKind == TypeKind.Enum)
        {
            if (!isCoded) return $"{(isNullable ? "MaybeWord" : "Word")}<{type}>()";
            var last = type.GetMembers().OfType<IFieldSymbol>().Count(one => one.IsConst) - 1;
            return isNullable ? $"({type}?)MaybeMember({last})" : $"({type})Member({last})";
        }

        if (RecordModel.IsId(type)) return $"{(isNullable ? "MaybeId" : "Id")}(static text => new {type}(text))";
        if (Values.TryGetValue(type.Name, out var names)) return $"{(isNullable ? names.ReadMaybe : names.Read)}()";
        return isNullable ? $"Maybe(Read{type.Name})" : $"Read{type.Name}()";
    }
}
