using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;

namespace Compat.Tests.PublicApi;

/// <summary>Writes what users of an assembly can see, one member a line, sorted. What the compiler adds to every record is left out.</summary>
internal static class ApiText
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
    private static readonly NullabilityInfoContext Nullability = new();

    public static string Of(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (var type in assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            text.Append(Head(type)).Append('\n');
            foreach (var line in Lines(type).OrderBy(line => line, StringComparer.Ordinal)) text.Append("  ").Append(line).Append('\n');
        }

        return text.ToString();
    }

    private static string Head(Type type)
    {
        if (type.IsEnum) return $"enum {type.FullName}";
        var kind = type.IsInterface ? "interface" : type.IsValueType ? "struct" : type is { IsAbstract: true, IsSealed: true } ? "static class"
            : type.IsAbstract ? "abstract class" : type.IsSealed ? "sealed class" : "class";
        var above = type.BaseType is { } parent && parent != typeof(object) && parent != typeof(ValueType) ? $" : {Name(parent)}" : "";
        return $"{kind} {type.FullName}{above}";
    }

    private static IEnumerable<string> Lines(Type type)
    {
        if (type.IsEnum) return Enum.GetNames(type).Select(name => $"{Convert.ToInt64(Enum.Parse(type, name), CultureInfo.InvariantCulture):000} {name}");
        return type.GetMembers(Declared).Select(Line).OfType<string>();
    }

    private static string? Line(MemberInfo member) => member switch
    {
        PropertyInfo { Name: "EqualityContract" } => null,
        PropertyInfo property when Seen(property.GetMethod) || Seen(property.SetMethod) => Property(property),
        _ when member.IsDefined(typeof(CompilerGeneratedAttribute)) => null,
        ConstructorInfo make when Seen(make) => $"new({Parameters(make)})",
        MethodInfo { IsSpecialName: true } special when !special.Name.StartsWith("op_", StringComparison.Ordinal) => null,
        MethodInfo method when Seen(method) => $"{Static(method)}{Name(method.ReturnParameter)} {method.Name}{Generic(method)}({Parameters(method)})",
        FieldInfo { IsPublic: true } field => $"{(field.IsLiteral ? "const " : field.IsStatic ? "static " : "")}{Name(field.FieldType)} {field.Name}",
        EventInfo { AddMethod: { } add } raised when Seen(add) => $"event {raised.Name}",
        _ => null,
    };

    private static bool Seen(MethodBase? method) => method is { IsPublic: true } or { IsFamily: true } or { IsFamilyOrAssembly: true };

    private static string Static(MethodBase method) => method.IsStatic ? "static " : "";

    private static string Generic(MethodInfo method) => method.IsGenericMethodDefinition
        ? $"<{string.Join(", ", method.GetGenericArguments().Select(Name))}>" : "";

    private static string Property(PropertyInfo property)
    {
        var read = Seen(property.GetMethod) ? " get;" : "";
        var write = !Seen(property.SetMethod) ? ""
            : property.SetMethod!.ReturnParameter.GetRequiredCustomModifiers().Any(m => m.Name == "IsExternalInit") ? " init;" : " set;";
        var required = property.CustomAttributes.Any(a => a.AttributeType.Name == "RequiredMemberAttribute") ? "required " : "";
        var mark = Nullability.Create(property) is { ReadState: NullabilityState.Nullable } && !property.PropertyType.IsValueType ? "?" : "";
        return $"{Static((property.GetMethod ?? property.SetMethod)!)}{required}{Name(property.PropertyType)}{mark} {property.Name} {{{read}{write} }}";
    }

    private static string Parameters(MethodBase method) => string.Join(", ", method.GetParameters().Select(parameter =>
        $"{(parameter.IsOut ? "out " : parameter.ParameterType.IsByRef ? "ref " : "")}{Name(parameter)} "
            + $"{parameter.Name}{(parameter.HasDefaultValue ? $" = {parameter.DefaultValue ?? "null"}" : "")}"));

    private static string Name(ParameterInfo parameter) =>
        Name(parameter.ParameterType) + (
            !parameter.ParameterType.IsValueType && Nullability.Create(parameter).ReadState == NullabilityState.Nullable ? "?" : "");

    private static string Name(Type type)
    {
        if (type.IsByRef) return Name(type.GetElementType()!);
        if (type.IsArray) return Name(type.GetElementType()!) + "[]";
        if (Nullable.GetUnderlyingType(type) is { } inner) return Name(inner) + "?";
        var name = type.Name.Split('`')[0];
        return type.IsGenericType ? $"{name}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>" : name;
    }
}
