using System.Collections;
using System.Reflection;

namespace Compat.Curation.Reviewing;

/// <summary>Gives ids their later names wherever they stand in records, so that a record and what names it are recognised after a rename.</summary>
internal sealed class Renames(IReadOnlyDictionary<object, object> ids)
{
    private static readonly MethodInfo Clone = typeof(object).GetMethod("MemberwiseClone", BindingFlags.NonPublic | BindingFlags.Instance)!;

    /// <summary>The value with later ids; the same object where none of its ids has one.</summary>
    public T In<T>(T value) where T : class => (T)Of(value)!;

    private object? Of(object? value)
    {
        switch (value)
        {
            case null or string or ValueType: return value;
            case Id or DottedId: return ids.TryGetValue(value, out var later) ? later : value;
            case IList list: return OfList(list);
        }

        object? copy = null;
        foreach (var field in FieldsOf(value.GetType()))
        {
            var (was, now) = (field.GetValue(value), Of(field.GetValue(value)));
            if (ReferenceEquals(was, now) || field.FieldType.IsValueType) continue;
            field.SetValue(copy ??= Clone.Invoke(value, null)!, now);
        }

        return copy ?? value;
    }

    private object OfList(IList list)
    {
        Array? copy = null;
        for (var i = 0; i < list.Count; i++)
        {
            var now = Of(list[i]);
            if (ReferenceEquals(now, list[i]) || list[i] is ValueType) continue;
            if (copy is null)
            {
                copy = Array.CreateInstance(list[i]!.GetType(), list.Count);
                for (var j = 0; j < list.Count; j++) copy.SetValue(list[j], j);
            }

            copy.SetValue(now, i);
        }

        return copy ?? (object)list;
    }

    private static FieldInfo[] FieldsOf(Type type) => type.GetFields(BindingFlags.NonPublic | BindingFlags.Instance);
}
