using Microsoft.CodeAnalysis;

namespace Compat.Generators;

/// <summary>A record and its fields, in the order of their declaration.</summary>
internal sealed class RecordModel
{
    private RecordModel(INamedTypeSymbol type)
    {
        Type = type;
        Constructor = type.InstanceConstructors.FirstOrDefault(one => one.Parameters.Length > 0 && one.Parameters.All(p => Property(p) is not null));
        Fields = type.GetMembers().OfType<IPropertySymbol>()
            .Where(one => !one.IsStatic && one.DeclaredAccessibility == Accessibility.Public)
            .Where(one => one.SetMethod is not null || IsParameter(one))
            .Select(one => new FieldModel(one)).ToArray();
        Kind = AttributeOf(type, "RecordAttribute") is { } kind ? MemberOf(kind.ConstructorArguments[0]) : null;

        IPropertySymbol? Property(IParameterSymbol parameter) => type.GetMembers().OfType<IPropertySymbol>().FirstOrDefault(one => IsOf(one, parameter));
        bool IsParameter(IPropertySymbol property) => Constructor?.Parameters.Any(one => IsOf(property, one)) ?? false;
        static bool IsOf(IPropertySymbol property, IParameterSymbol parameter) =>
            string.Equals(property.Name, parameter.Name, StringComparison.OrdinalIgnoreCase);
    }

    public INamedTypeSymbol Type { get; }

    public string Name => Type.Name;

    /// <summary>The constructor that takes all fields; null where they are set one by one.</summary>
    public IMethodSymbol? Constructor { get; }

    public IReadOnlyList<FieldModel> Fields { get; }

    /// <summary>Which kind of record it is, of one that has an id of its own.</summary>
    public string? Kind { get; }

    /// <summary>What a list of such records is put in the order of: a member called <c>Key</c>, else the first field.</summary>
    public string Key => Type.GetMembers("Key").Any() ? "Key" : Fields[0].Name;

    /// <summary>The records that can be reached from some, these included.</summary>
    public static IReadOnlyList<RecordModel> Reachable(params INamedTypeSymbol[] from) => Reachable(_ => false, from);

    /// <summary>The records that can be reached from some, these included, without passing through a type that is closed.</summary>
    public static IReadOnlyList<RecordModel> Reachable(Func<ITypeSymbol, bool> isClosed, params INamedTypeSymbol[] from)
    {
        var seen = new Dictionary<ISymbol, RecordModel>(SymbolEqualityComparer.Default);
        foreach (var type in from) Visit(type);
        return seen.Values.ToArray();

        void Visit(INamedTypeSymbol type)
        {
            if (seen.ContainsKey(type) || isClosed(type)) return;
            var record = seen[type] = new RecordModel(type);
            foreach (var field in record.Fields)
                if (IsRecord(field.Item)) Visit((INamedTypeSymbol)field.Item);
        }
    }

    public static RecordModel Of(ITypeSymbol type) => new((INamedTypeSymbol)type);

    public static bool IsId(ITypeSymbol type) => type is { IsRecord: true, IsSealed: true, BaseType.Name: "Id" or "DottedId" };

    /// <summary>Whether a type is a record of several fields and not one value: a figure, a text, a word, a range.</summary>
    public static bool IsRecord(ITypeSymbol type) =>
        type is INamedTypeSymbol { IsRecord: true } && !IsId(type) && !CodecText.IsValue(type.Name);

    /// <summary>The name of the member of an enumeration that an argument of an attribute is.</summary>
    public static string MemberOf(TypedConstant word) =>
        word.Type!.GetMembers().OfType<IFieldSymbol>().First(one => Equals(one.ConstantValue, word.Value)).Name;

    public static AttributeData? AttributeOf(ISymbol symbol, string name) => symbol.GetAttributes().FirstOrDefault(one => one.AttributeClass?.Name == name);
}

/// <summary>One field of a record.</summary>
internal sealed class FieldModel
{
    public FieldModel(IPropertySymbol property)
    {
        Property = property;
        Type = property.Type;
        IsNullable = Type.NullableAnnotation == NullableAnnotation.Annotated;
        if (Type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } value) Type = value.TypeArguments[0];
        Type = Type.WithNullableAnnotation(NullableAnnotation.NotAnnotated);
        IsList = Type.Name == "IReadOnlyList";
        Item = IsList ? ((INamedTypeSymbol)Type).TypeArguments[0] : Type;
    }

    public IPropertySymbol Property { get; }

    public string Name => Property.Name;

    /// <summary>Its type; of one that may be missing, the type of what is there.</summary>
    public ITypeSymbol Type { get; }

    /// <summary>Whether it may be null.</summary>
    public bool IsNullable { get; }

    public bool IsList { get; }

    /// <summary>What it is a list of; else its type.</summary>
    public ITypeSymbol Item { get; }

    /// <summary>What a file calls it.</summary>
    public string Key => Argument("KeyAttribute", 0) ?? Kebab(Name);

    /// <summary>The key of the braces in which it stands in a file; null where it stands among the keys of the record.</summary>
    public string? Within => Named("KeyAttribute", "Within") as string;

    /// <summary>The words a file has for false and true; null where it writes <c>true</c>.</summary>
    public (string? No, string? Yes)? Words => Has("TruthAttribute") ? (Argument("TruthAttribute", 0), Argument("TruthAttribute", 1)) : null;

    /// <summary>What it measures; null where it is no figure, or a bare one.</summary>
    public string? Quantity => Argument("MeasuredAttribute", 0);

    /// <summary>The key of the agent in whose unit a strength is stated; null where it is that of the record.</summary>
    public string? StrengthOf => Named("MeasuredAttribute", "Of") as string;

    public bool TakesBare => Named("MeasuredAttribute", "TakesBare") is true;

    public bool Has(string attribute) => RecordModel.AttributeOf(Property, attribute) is not null;

    private string? Argument(string attribute, int at) => RecordModel.AttributeOf(Property, attribute)?.ConstructorArguments[at].Value as string;

    private object? Named(string attribute, string name) =>
        RecordModel.AttributeOf(Property, attribute)?.NamedArguments.FirstOrDefault(one => one.Key == name).Value.Value;

    private static string Kebab(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
